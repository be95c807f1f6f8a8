/** A form that opens with what an earlier visit left says so, and can be begun again. */
import { Button } from '../ui/button';
import { Part } from '../ui/page';
import type { Form } from './form';
import { words } from './words';

export const Begun = ({ form }: { readonly form: Pick<Form<object>, 'restored' | 'reset'> }) =>
  form.restored ? (
    <Part>
      <p>{words.begun}</p>
      <Button onTap={form.reset}>{words.beginAgain}</Button>
    </Part>
  ) : null;
