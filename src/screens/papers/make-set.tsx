/** The one button that makes the set, how far it is, and the set once it is made; on the check and under the signature. */
import type { ComponentChildren, ComponentType } from 'preact';
import { Button } from '../../ui/button';
import { Fault } from '../fault';
import { Made } from './made';
import { pagesAbout } from './pages-about';
import { type SetBegun, useSet } from './set-draft';
import { setWords as w } from './set-words';
import { PaperUnderWay } from './under-way';
import { useMaking } from './use-making';
import { useWayBack } from './way-back';

export type SetPageProps = {
  readonly set: string;
  readonly begun: SetBegun;
  /** Goes where the button that makes the set belongs, with the door to the other page above it. */
  readonly act: (door: ComponentChildren) => ComponentChildren;
};

type SetPageOf = { readonly set: string; readonly page: ComponentType<SetPageProps> };

/** A page of the set, on which it can be made; how far it is stands in its place meanwhile, and the set once it is made. */
export function SetPage({ set, page: Page }: SetPageOf) {
  const begun = useSet(set);
  const { form, wanted } = begun;
  const { back } = useWayBack();
  const { make, made, fault, underWay } = useMaking(() => {
    back();
    form.done();
  });
  const act = (door: ComponentChildren) => (
    <>
      <Fault words={fault} />
      {door}
      <Button
        look="primary"
        voice="serif"
        second={w.makeItSecond(pagesAbout(wanted))}
        onTap={() => void make({ kind: 'disposal', wanted })}
      >
        {w.makeIt}
      </Button>
    </>
  );
  if (made)
    return (
      <Made
        paper={made}
        next={{ label: w.handOver, second: w.handOverSecond, href: `#/hand-overs/new/${made.paperId}` }}
      />
    );
  if (underWay) return <PaperUnderWay title={w.making} underWay={underWay} />;
  return <Page set={set} begun={begun} act={act} />;
}
