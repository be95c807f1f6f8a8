/** The one button that makes the set, how far it is, and the set once it is made; on the check and under the signature. */
import type { ComponentChildren } from 'preact';
import { Button } from '../../ui/button';
import { Fault } from '../fault';
import { Made } from './made';
import { pagesAbout } from './pages-about';
import type { SetBegun } from './set-draft';
import { setWords as w } from './set-words';
import { PaperUnderWay } from './under-way';
import { useMaking } from './use-making';
import { useWayBack } from './way-back';

/** @returns `page` stands instead of the page while the set is made, and once it is; `act` goes where its button belongs */
export function useMakeSet({ form, wanted }: SetBegun) {
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
  const page = made ? (
    <Made
      paper={made}
      next={{ label: w.handOver, second: w.handOverSecond, href: `#/hand-overs/new/${made.paperId}` }}
    />
  ) : underWay ? (
    <PaperUnderWay title={w.making} underWay={underWay} />
  ) : null;
  return { page, act };
}
