/** The lines of one group of evidence: a way of knowing to pick, and the numbers it asks for. */

import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { Notice } from '../../ui/notice';
import type { Typed } from '../form';
import { NumberField } from '../number-field';
import type { Line } from './evidence-asks';
import { type GroupRead, readLine } from './evidence-draft';
import styles from './evidence-lines.module.css';

type Props<B extends string> = {
  readonly name: string;
  readonly by: B;
  readonly ways: readonly { readonly value: B; readonly label: string }[];
  readonly onBy: (by: B) => void;
  readonly knownLabel: string;
  readonly draft: { readonly a: Typed; readonly b: Typed; readonly c?: Typed | undefined };
  readonly lines: readonly Line[];
  readonly onLine: (key: Line['key'], field: Typed) => void;
  readonly read: GroupRead<unknown>;
  readonly tried: boolean;
  readonly children?: ComponentChildren;
};

/** How a value is known, picked under its label. */
function Known<B extends string>(props: Pick<Props<B>, 'name' | 'by' | 'ways' | 'onBy' | 'knownLabel'>) {
  const id = useId();
  return (
    <>
      <label class="visually-hidden" for={id}>
        {props.name}, {props.knownLabel}
      </label>
      <select
        id={id}
        class={styles.known}
        value={props.by}
        onChange={(event) => props.onBy(event.currentTarget.value as B)}
      >
        {props.ways.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </>
  );
}

export function EvidenceLines<B extends string>(props: Props<B>) {
  const { lines, draft, onLine, read, tried, children } = props;
  const begun = read.state === 'wrong';
  const known = <Known {...props} />;
  const [first] = lines;
  return (
    // No fieldset: Chromium loses its first line when the lines in it change.
    <div class={styles.group}>
      {lines.length === 0 && (
        <p class={styles.alone}>
          <span class={styles.name}>{props.name}</span>
          {known}
        </p>
      )}
      {first && !first.label.startsWith(props.name) && <p class={styles.name}>{props.name}</p>}
      {lines.map((line, i) => (
        <NumberField
          key={line.key}
          label={line.label}
          field={draft[line.key] ?? { typed: '', unit: line.units[0] }}
          units={line.units}
          onChange={(field) => onLine(line.key, field)}
          read={readLine(draft, line)}
          tried={tried && begun}
          optional={!begun || line.mayStayEmpty === true}
          evidence={i === 0 ? known : undefined}
          hint={null}
        />
      ))}
      {children}
      {read.state === 'wrong' && read.whole !== undefined && (
        <Notice mark="wrong" size="small" role="alert">
          {read.whole}
        </Notice>
      )}
    </div>
  );
}
