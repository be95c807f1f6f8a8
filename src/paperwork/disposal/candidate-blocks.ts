/** The candidates of a container behind its sheet: law by law, then the rules they name, what is missing, and why dilution is no way out. */
import { type Block, table } from '../document';
import { capital, joined } from '../words';
import type { ContainerData, DisposalData } from './disposal-data';
import { paperWords as w } from './paper-words';
import { rangeText, strong } from './printed';

type Laws = NonNullable<ContainerData['laws']>;
type Line = Laws['candidates'][number];

const sourceText = ({ rule, cite, status }: Pick<Line, 'rule' | 'cite' | 'status'>): string =>
  `${rule} (${cite}: ${status})`;

/** Rules by number: several candidates rest on one. */
const numbered = (lines: readonly Line[]): ReadonlyMap<string, string> =>
  new Map([...new Set(lines.map(sourceText))].map((text, at) => [text, `R${at + 1}`]));

const numbersText = ({ numbers, lacks }: Line): string => {
  const held = numbers.map(({ sentence, figure, limit }) =>
    w.held(sentence, rangeText(figure), rangeText(limit)),
  );
  const missing = lacks.length > 0 ? [w.lacks(lacks)] : [];
  return [...held, ...missing].join('; ') || w.noNumber;
};

function tableOf(lines: readonly Line[], rules: ReadonlyMap<string, string>): Block {
  return table(
    [
      { key: 'code', head: w.candidate, share: 34 },
      { key: 'standing', head: w.standing, share: 16 },
      { key: 'numbers', head: w.numbersAndLimit, share: 46 },
      { key: 'rule', head: w.ruleNumber, share: 7 },
      { key: 'said', head: w.whoseWord, share: 24 },
    ],
    lines.map((line) => ({
      kind: 'cells' as const,
      cells: {
        code: strong(line.means === undefined ? line.code : `${line.code}: ${line.means}`),
        standing: line.standing,
        numbers: numbersText(line),
        rule: rules.get(sourceText(line)) ?? w.none,
        said: line.said,
      },
    })),
  );
}

function schemeBlocks(lines: readonly Line[], rules: ReadonlyMap<string, string>): Block[] {
  return [...new Set(lines.map(({ scheme }) => scheme))].flatMap((scheme): Block[] => [
    { kind: 'heading', level: 2, text: scheme },
    tableOf(
      lines.filter((line) => line.scheme === scheme),
      rules,
    ),
  ]);
}

const small = (text: string): Block => ({ kind: 'paragraph', size: 'small', text });

function ofContainer(code: string, { candidates, given, lacking, dilution }: Laws): Block[] {
  const told = candidates.filter(({ standing }) => standing !== w.notDetermined);
  const rules = numbered(told);
  return [
    { kind: 'heading', level: 1, text: w.candidatesOf(code) },
    { kind: 'mark', mark: 'candidate', text: [{ text: w.candidatesNote, strong: true }] },
    ...schemeBlocks(told, rules),
    ...given.map(({ scheme, code: one, said }) => small(w.given(scheme, one, said))),
    ...(lacking.length > 0 ? [{ kind: 'heading', level: 2, text: capital(w.notDetermined) } as const] : []),
    ...lacking.map(({ what, decides }) => small(w.decides(capital(joined(what)), decides))),
    { kind: 'heading', level: 2, text: w.rulesNamed },
    ...[...rules].map(
      ([text, number]): Block => ({
        kind: 'paragraph',
        size: 'small',
        text: [{ text: `${number}\u2002`, strong: true }, { text }],
      }),
    ),
    ...dilution.map((one) => small(sourceText(one))),
  ];
}

export const candidatesBlocks = ({ containers }: DisposalData): Block[] =>
  containers.flatMap(({ code, laws }) => (laws ? ofContainer(code, laws) : []));
