/** An address of something that is not in the record. */
import type { ComponentChildren } from 'preact';
import { Button } from '../../ui/button';
import { Frame } from '../frame';
import { words } from './words';

type Way = { readonly href: string; readonly words: string };

const toBatches: Way = { href: '#/batches', words: words.step.toBatches };

export const Nowhere = ({
  children,
  way = toBatches,
}: {
  readonly children: ComponentChildren;
  readonly way?: Way;
}) => (
  <Frame
    title={children}
    place="batches"
    actions={
      <Button look="primary" href={way.href}>
        {way.words}
      </Button>
    }
  />
);
