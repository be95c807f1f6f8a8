/** Rows of the tables of a disposal paper: each belongs to a container and says which. */
import type { ContainerData, DisposalData } from '../disposal/disposal-data';
import { plainText } from './plain';
import { type ColumnOf, none } from './table';

/** Something of one container. */
export type In<T> = { readonly c: ContainerData; readonly it: T };

export const each = <T>(
  { containers }: DisposalData,
  of: (container: ContainerData) => readonly T[],
): In<T>[] => containers.flatMap((c) => of(c).map((it) => ({ c, it })));

type OfContainer = { readonly c: ContainerData };

export const whichContainer: readonly ColumnOf<OfContainer>[] = [
  {
    name: 'container',
    says: 'Code that stands on the container.',
    kind: 'text',
    of: ({ c }) => plainText(c.code),
  },
  {
    name: 'container id',
    says: 'Identifier of the container in the record; no two have the same.',
    kind: 'text',
    of: ({ c }) => c.containerId,
  },
];

/** A column of text; "none" where there is none. */
export const textColumn = <Row>(
  name: string,
  says: string,
  of: (row: Row) => string | undefined,
): ColumnOf<Row> => ({ name, says, kind: 'text', of: (row) => plainText(of(row) ?? none) });

/** Several texts in one cell. */
export const listed = (texts: readonly string[], between = '; '): string =>
  texts.length === 0 ? none : texts.join(between);
