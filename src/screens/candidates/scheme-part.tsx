/** Candidates of one law: those that fire, those that need a judgement or a test, those that came close, those that somebody gave. */
import { acceptedBesides, type ContainerCandidates } from '../../ledger/container-candidates';
import type { Scheme } from '../../ledger/entries/candidates';
import type { ContainerState } from '../../ledger/state';
import { codeText, schemeWords } from '../../paperwork/candidate-words';
import type { Candidate } from '../../rules/candidate';
import { hazardText } from '../../rules/clp/hazard';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import recordStyles from '../record/record.module.css';
import { CandidateRow, GivenRow } from './candidate-row';
import styles from './candidates.module.css';
import { Cited } from './cited-rules';
import { candidateWords as w } from './words';

type Group = {
  readonly container: ContainerState;
  readonly title?: string;
  readonly second?: string;
  readonly label: string;
  readonly candidates: readonly Candidate[];
};

const Head = ({ title, second }: { readonly title: string; readonly second?: string | undefined }) => (
  <div class={styles.inset}>
    <h3>{title}</h3>
    {second !== undefined && <p class={styles.quiet}>{second}</p>}
  </div>
);

const GroupOf = ({ container, title, second, label, candidates }: Group) =>
  candidates.length === 0 ? null : (
    <>
      {title !== undefined && <Head title={title} second={second} />}
      <Rows label={title === undefined ? label : `${label}: ${title}`}>
        {candidates.map((candidate) => (
          <CandidateRow key={candidate.code} container={container} candidate={candidate} />
        ))}
      </Rows>
    </>
  );

type Props = {
  readonly container: ContainerState;
  readonly all: ContainerCandidates;
  readonly scheme: Scheme;
  readonly candidates: readonly Candidate[];
};

export function SchemePart({ container, all, scheme, candidates }: Props) {
  const label = schemeWords[scheme];
  const byPh = new Set(scheme === 'clp' ? all.clp.phRule.map(hazardText) : []);
  const of = (standing: Candidate['standing']) => candidates.filter((one) => one.standing === standing);
  const fires = of('fires').filter(({ code }) => !byPh.has(code));
  const given = acceptedBesides(container, all).filter(({ body }) => body.scheme === scheme);
  const none =
    scheme === 'transport' ? all.transport.none : scheme === 'waste-list' ? all.wasteList?.none : undefined;
  const open = of('open').map(({ code }) => codeText(code));
  const group = { container, label };
  return (
    <Part rule title={label} width="edge">
      {of('fires').length === 0 && (
        <div class={styles.inset}>{none ? <Cited citation={none} /> : <p>{w.none[scheme]}</p>}</div>
      )}
      <GroupOf {...group} {...(byPh.size > 0 ? { title: w.byCalculation } : {})} candidates={fires} />
      <GroupOf
        {...group}
        title={w.byPhAlone}
        second={w.byPhAloneSecond}
        candidates={of('fires').filter(({ code }) => byPh.has(code))}
      />
      <GroupOf {...group} title={w.judgement} candidates={of('judgement')} />
      {of('close').length > 0 && (
        <details class={`${recordStyles.fold} ${styles.fold}`}>
          <summary>
            <span>{w.closeTitle(of('close').length)}</span>
          </summary>
          <GroupOf {...group} candidates={of('close')} />
        </details>
      )}
      {given.length > 0 && (
        <>
          <Head title={w.besides} second={w.besidesSecond} />
          <Rows label={`${label}: ${w.besides}`}>
            {given.map((answer) => (
              <GivenRow key={answer.body.code} container={container} answer={answer} />
            ))}
          </Rows>
        </>
      )}
      {open.length > 0 && (
        <div class={styles.inset}>
          <p class={styles.quiet}>{w.openHere(open.join(', '))}</p>
        </div>
      )}
    </Part>
  );
}
