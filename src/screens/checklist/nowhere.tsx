/** An address of something that is not in the record. */
import type { ComponentChildren } from 'preact';
import { Button } from '../../ui/button';
import { Frame } from '../frame';
import { words } from './words';

export const Nowhere = ({ children }: { readonly children: ComponentChildren }) => (
  <Frame
    title={children}
    place="batches"
    actions={
      <Button look="primary" href="#/batches">
        {words.step.toBatches}
      </Button>
    }
  />
);
