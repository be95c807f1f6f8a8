import { render } from 'preact';
import { registerServiceWorker, takeUpdate, updateWaiting } from './app/updates';

const Shell = () => (
  <main>
    <h1>Leesbook</h1>
    {updateWaiting.value && (
      <button type="button" onClick={takeUpdate}>
        Take the new version
      </button>
    )}
  </main>
);

const place = document.getElementById('app');
if (place) render(<Shell />, place);
void registerServiceWorker();
