/** Prices, changed where they are used: each that is new becomes an entry. */
import { useState } from 'preact/hooks';
import type { BaseId } from '../../reference/tables';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { NumberField } from '../number-field';
import { pricedText } from '../record/treatment-words';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import { newPrices, PricesDraft, pricesDraft, pricesFor, readPrice, withPrice } from './prices-draft';
import { twoWaysWords as w } from './words';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Those of ISO 4217 that the phone knows. */
const currencies = Intl.supportedValuesOf('currency');

/** @param base whose price is asked; give the component its name as key */
export function Prices({ base }: { readonly base: BaseId }) {
  const { state } = useShell();
  const form = useForm(`prices-${base}`, PricesDraft, () => pricesDraft(state.value, base));
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const [nothing, setNothing] = useState(false);
  const asked = pricesFor(base);
  async function keep(): Promise<void> {
    tryNow();
    if (asked.some((price) => readPrice(form.value, price).state === 'wrong')) return;
    const told = newPrices(state.value, base, form.latest());
    setNothing(told.length === 0);
    for (const intention of told) if (!(await write(intention))) return;
    form.reset();
  }
  return (
    <Part rule title={w.prices}>
      <p>{w.pricesSecond}</p>
      {asked.map((price) => (
        <NumberField
          key={price}
          label={capital(pricedText(price))}
          field={form.value.prices[price] ?? { typed: '', unit: '' }}
          units={currencies}
          onChange={(field) => form.change(withPrice(form.latest(), price, field))}
          read={readPrice(form.value, price)}
          tried={tried}
          hint={state.value.prices.has(price) ? null : w.noPrice}
          optional
        />
      ))}
      <TextField
        label={w.saidBy}
        value={form.value.saidBy}
        onInput={(saidBy) => form.change({ saidBy })}
        hint={words.optional}
        maxLength={120}
      />
      <Fault words={fault} />
      {nothing && <p role="status">{w.pricesNothing}</p>}
      <Button disabled={busy} onTap={() => void keep()}>
        {w.keepPrices}
      </Button>
    </Part>
  );
}
