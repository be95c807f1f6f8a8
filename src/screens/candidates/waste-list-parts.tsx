/** What only an entry of the list of waste has: why it, its mirror, the choosing order, codes that are not to be taken. */

import { codeText, meaningOf } from '../../paperwork/candidate-words';
import type { WasteList, WasteListCandidate } from '../../rules/waste-list/entries';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { CitedRules } from './cited-rules';
import { candidateWords as w } from './words';

const named = (code: string): string => {
  const says = meaningOf({ scheme: 'waste-list', code });
  return says === '' ? codeText(code) : `${codeText(code)}: ${says}`;
};

const NotProposed = ({ title, codes }: { readonly title: string; readonly codes: WasteList['otherwise'] }) =>
  codes.length === 0 ? null : (
    <Part rule title={title} width="edge">
      <Rows label={title}>
        {codes.map(({ code, why }) => (
          <Row key={`${code} ${why.rule}`} title={named(code)} second={`${why.rule} (${why.cite})`} />
        ))}
      </Rows>
    </Part>
  );

export function WasteListParts({
  list,
  candidate,
}: {
  readonly list: WasteList;
  readonly candidate: WasteListCandidate;
}) {
  const { counterpart, why, rules, citation } = candidate;
  return (
    <>
      <Part rule title={w.whyThis}>
        <p>{why}</p>
        {counterpart !== undefined && (
          <p>
            <b>{w.counterpart}:</b> {named(counterpart)}. {w.isMirror}
          </p>
        )}
        <CitedRules rules={rules.filter(({ rule }) => rule !== citation.rule)} />
      </Part>
      <NotProposed title={w.otherwise} codes={list.otherwise} />
      <NotProposed title={w.wrongCodes} codes={list.wrong} />
    </>
  );
}
