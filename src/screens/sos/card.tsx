/** An emergency card: numbered acts, words to say, the call at the thumb, the other cards in the bar. */
import { actOf, type EmergencyCard, emergencyCards } from '../../safety/emergency-cards';
import type { BarAction } from '../../ui/bar';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { apartWords } from '../apart/words';
import { rinseWords } from '../clocks/words';
import { Frame, hour } from '../frame';
import { useShell } from '../shell';
import { telephone } from '../telephone';
import { goBack } from './go-back';
import { useNoted } from './noted';
import { useRealWorkshop } from './real-workshop';
import { RinseFace } from './rinse-face';
import styles from './sos.module.css';
import { useRinse } from './use-rinse';
import { sayWords, words } from './words';

/** As many as stand in the bar beside "Back" and "More". */
const inBar = 4;

/** The container that it is about, where the card opened by itself; the other cards keep it. */
type Then = { readonly then?: string | undefined };

function useWaysOut(card: EmergencyCard, { then }: Then): readonly BarAction[] {
  const { go } = useShell();
  const kept = then === undefined ? '' : `/then/${then}`;
  const others = [...emergencyCards.values()].filter(({ id }) => id !== card.id).slice(0, inBar);
  return [
    { label: words.back, onTap: () => goBack(go) },
    ...others.map(({ id, short }) => ({ label: short, onTap: () => go(`sos/${id}${kept}`, 'replace') })),
    { label: words.more, onTap: () => go('sos/all', 'replace') },
  ];
}

type Rinsing = ReturnType<typeof useRinse>;
type Times = Pick<ReturnType<typeof useNoted>, 'times' | 'note'>;

/** The acts in their order, the words to say with the call. */
function Acts({ card, rinsing }: { readonly card: EmergencyCard; readonly rinsing: Rinsing }) {
  const workshop = useRealWorkshop();
  return (
    <ol class={styles.steps} aria-label={words.steps}>
      {card.steps.map((step) => (
        <li class={styles.step} key={step.do}>
          <div>
            <p class={styles.act}>{actOf(step, workshop?.emergencyNumber)}</p>
            {step.call && <p class={styles.say}>{sayWords(card, workshop)}</p>}
            {step.call && !workshop && <p class={styles.small}>{words.placeUnknown}</p>}
            {step.small?.map((line) => (
              <p class={styles.small} key={line}>
                {line}
              </p>
            ))}
            {step.timerMinutes !== undefined && rinsing.rinse && (
              <RinseFace rinse={rinsing.rinse} second={rinsing.second} again={rinsing.again} />
            )}
          </div>
        </li>
      ))}
    </ol>
  );
}

type Begin = { readonly minutes: number; readonly start: () => void };

/**
 * The call is the largest thing at the thumb; without a described workshop the person knows the number. Beside it a
 * rinse is begun, which notes the hour too; while it runs, and on other cards, the hour alone is noted.
 */
function Thumb({ times, note, begin }: Times & { readonly begin: Begin | null }) {
  const { now } = useShell();
  const number = useRealWorkshop()?.emergencyNumber;
  return (
    <>
      {times.length > 0 && (
        <p class={styles.noted} role="status">
          {words.noted(times.map(hour).join(', '))}
        </p>
      )}
      <div class={styles.thumb}>
        {(number === undefined ? words.local : [number]).map((one) => (
          <Button
            key={one}
            look="call"
            href={telephone(one)}
            second={number === undefined ? undefined : words.emergency}
          >
            {words.call(one)}
          </Button>
        ))}
        <Button centred onTap={begin ? begin.start : note} second={hour(now.value)}>
          {begin ? rinseWords.start(begin.minutes) : words.note}
        </Button>
      </div>
    </>
  );
}

/** The way on to the record, once nothing is left to do here. */
function OnToRecord({ then = '' }: Then) {
  const { state } = useShell();
  const code = state.value.containers.get(then)?.body.code;
  if (code === undefined) return null;
  return <Button href={`#/containers/${then}`}>{apartWords.onToRecord(unbroken(code))}</Button>;
}

export function Card({ card, then }: { readonly card: EmergencyCard } & Then) {
  const noted = useNoted(card.id);
  const { times, note, forget } = noted;
  const minutes = card.steps.find(({ timerMinutes }) => timerMinutes !== undefined)?.timerMinutes;
  const rinsing = useRinse(minutes);
  const begins = minutes !== undefined && (rinsing.rinse?.overdue ?? true);
  const start = (): void => {
    note();
    rinsing.start();
  };
  const strikeOut = (): void => {
    forget();
    rinsing.forget();
  };
  const workshop = useRealWorkshop();
  const said = card.steps.some(({ call }) => call);
  return (
    <Frame
      title={card.title}
      tone="stop"
      sos={false}
      focusKey={card.id}
      ways={useWaysOut(card, { then })}
      actions={<Thumb times={times} note={note} begin={begins ? { minutes, start } : null} />}
    >
      <Part>
        <Acts card={card} rinsing={rinsing} />
        {!said && <p class={styles.say}>{sayWords(card, workshop)}</p>}
        {!workshop && <p>{words.notDescribed}</p>}
        <p class={styles.signal}>
          {workshop?.noSignal === undefined ? words.noSignalUnknown : words.noSignal(workshop.noSignal)}
        </p>
        <OnToRecord then={then} />
        {times.length > 0 && (
          <Button look="plain" onTap={strikeOut}>
            {words.forget}
          </Button>
        )}
      </Part>
    </Frame>
  );
}
