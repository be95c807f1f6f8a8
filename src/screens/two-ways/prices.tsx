/** Prices, changed where they are used: each that is new becomes an entry. */
import { useState } from 'preact/hooks';
import type { Priced } from '../../ledger/entries/prices';
import type { BaseId } from '../../reference/tables';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { type Typed, useForm } from '../form';
import { NumberField } from '../number-field';
import { pricedText } from '../record/treatment-words';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import {
  currenciesFor,
  currencyTyped,
  newPrices,
  PricesDraft,
  pricesDraft,
  pricesFor,
  readPrice,
  withPrice,
} from './prices-draft';
import { twoWaysWords as w } from './words';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** @param base whose price is asked; give the component its name as key */
export function Prices({ base }: { readonly base: BaseId }) {
  const { state } = useShell();
  const form = useForm(`prices-${base}`, PricesDraft, () => pricesDraft(state.value, base));
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const [nothing, setNothing] = useState(false);
  const [coding, setCoding] = useState<Priced | null>(null);
  const [code, setCode] = useState('');
  const asked = pricesFor(base);
  const put = (price: Priced, field: Typed): void => {
    const other = field.unit === w.otherCurrency;
    setCoding(other ? price : coding === price ? null : coding);
    if (!other) form.change(withPrice(form.latest(), price, field));
  };
  const type = (typed: string): void => {
    setCode(typed);
    const unit = currencyTyped(typed);
    const field = coding && form.latest().prices[coding];
    if (coding && field && unit) form.change(withPrice(form.latest(), coding, { ...field, unit }));
  };
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
          units={[...currenciesFor(state.value, form.value), w.otherCurrency]}
          onChange={(field) => put(price, field)}
          read={readPrice(form.value, price)}
          tried={tried}
          hint={state.value.prices.has(price) ? null : w.noPrice}
          optional
        />
      ))}
      {coding !== null && (
        <TextField
          label={w.currencyCode}
          value={code}
          onInput={type}
          hint={w.currencyHint}
          error={code.trim().length >= 3 && currencyTyped(code) === null ? w.currencyHint : undefined}
          maxLength={3}
        />
      )}
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
