/** The primary answer of a form: it writes down what stands there. What became of the last attempt stands over it. */
import type { ComponentChildren } from 'preact';
import { Button } from '../ui/button';
import { Fault } from './fault';

type Props = {
  readonly fault: string | null;
  readonly busy: boolean;
  readonly keep: () => Promise<void>;
  /** What it does, in the words of the form. */
  readonly label: string;
  /** Another way on after a refusal. */
  readonly children?: ComponentChildren;
};

export const KeepButton = ({ fault, busy, keep, label, children }: Props) => (
  <>
    <Fault words={fault} />
    {children}
    <Button look="primary" disabled={busy} onTap={() => void keep()}>
      {label}
    </Button>
  </>
);
