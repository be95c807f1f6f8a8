/** The first page: what this is, and its doors. */
import { useState } from 'preact/hooks';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { WelcomePage } from './welcome-page';

export function WelcomeScreen() {
  const { demo, record } = useShell();
  const [laying, setLaying] = useState(false);
  function look(): void {
    setLaying(true);
    void demo.enter().finally(() => setLaying(false));
  }
  return <WelcomePage outer={Frame} laying={laying} look={record === 'real' ? look : null} />;
}
