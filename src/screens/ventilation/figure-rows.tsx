/** Rows that the parts of a result share. */
import type { Figure } from '../../quantities/figure';
import type { Said } from '../../reference/nitrous-gas-tables';
import type { VentilationResult } from '../../safety/ventilation/check';
import { containerWords } from '../containers/words';
import { FigureRow } from '../figure-row';

export type ResultProps = {
  readonly result: VentilationResult;
  /** Address of the working of a figure by its name. */
  readonly href: (name: string) => string;
  readonly batchId: string | null;
};

/** What somebody wrote, and whether one of us read it there. */
export const SaidLine = ({ text, status }: Pick<Said, 'text' | 'status'>) => (
  <p>
    {text} <small>({containerWords.working.status[status]})</small>
  </p>
);

type Named = readonly [name: string, title: string, figure: Figure | undefined, second?: string];

/** Rows of the figures that there are. */
export const NamedRows = ({ rows, href }: { rows: readonly Named[] } & Pick<ResultProps, 'href'>) => (
  <>
    {rows.map(
      ([name, title, figure, second]) =>
        figure && <FigureRow key={name} title={title} second={second} figure={figure} href={href(name)} />,
    )}
  </>
);
