/** What arose, by kind, and what stood here at both ends of the year. */
import type { ComponentChildren } from 'preact';
import type { YearAccount } from '../../ledger/year-account';
import type { Weighed } from '../../ledger/year-masses';
import { besidesMeans, besidesName } from '../../paperwork/year/account-words';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { thingName } from '../words';
import { atLeast, codeOf, sentences } from './sayings';
import { yearWords as w } from './words';

export type YearPart = { readonly year: string; readonly account: YearAccount };

export const workingAt = (year: string, key: string): string => `#/papers/year/${year}/working/${key}`;

type EdgeProps = {
  readonly title: string;
  /** Words above the rows. */
  readonly says?: string | undefined;
  readonly children: ComponentChildren;
};

/** A part whose rows reach the edges, with words that do not. */
export const Edge = ({ title, says, children }: EdgeProps) => (
  <>
    <Part rule title={title}>
      {says !== undefined && <p>{says}</p>}
    </Part>
    <Part width="edge">{children}</Part>
  </>
);

type MassRowProps = {
  readonly title: string;
  readonly second?: string | undefined;
  readonly mass: Weighed;
  readonly href: string;
};

/** A sum with its working; what has no mass is said beside it. */
export function MassRow({ title, second = '', mass, href }: MassRowProps) {
  const says = sentences(second, atLeast(mass));
  return mass.sum ? (
    <FigureRow title={title} second={says} figure={mass.sum} href={href} />
  ) : (
    <Row
      title={title}
      second={says}
      figure={<span>{mass.unweighed.length > 0 ? w.noMass : w.nothingHere}</span>}
    />
  );
}

export function KindRows({ year, account }: YearPart) {
  const { state } = useShell();
  const { kinds, arose, besides, found } = account;
  return (
    <>
      <Edge title={w.arose} says={kinds.length + found.length === 0 ? w.nothingArose : undefined}>
        <Rows label={w.arose}>
          {kinds.length > 0 && <MassRow title={w.inAll} mass={arose} href={workingAt(year, 'arose')} />}
          {kinds.map(({ kind, mass }) => (
            <MassRow key={kind} title={thingName(kind)} mass={mass} href={workingAt(year, `kind-${kind}`)} />
          ))}
          {found.map((id) => (
            <Row
              key={id}
              mark={<Mark kind="unknown" />}
              title={codeOf(state.value, id)}
              second={w.found}
              figure={<span>{w.noMass}</span>}
              href={`#/containers/${id}`}
            />
          ))}
        </Rows>
      </Edge>
      {besides.length > 0 && (
        <Edge title={w.besides}>
          <Rows label={w.besides}>
            {besides.map(({ as, mass }) => (
              <MassRow
                key={as}
                title={besidesName[as]}
                second={besidesMeans[as]}
                mass={mass}
                href={workingAt(year, `besides-${as}`)}
              />
            ))}
          </Rows>
        </Edge>
      )}
    </>
  );
}

export function HereRows({ year, account: { heldAtStart, heldAtEnd } }: YearPart) {
  return (
    <Edge title={w.here}>
      <Rows label={w.here}>
        <MassRow title={w.atStart} mass={heldAtStart} href={workingAt(year, 'held-start')} />
        <MassRow title={w.atEnd} mass={heldAtEnd} href={workingAt(year, 'held-end')} />
      </Rows>
    </Edge>
  );
}
