import { render } from 'preact';
import { App } from './app/app';
import { startClock } from './app/clock';
import { registerServiceWorker } from './app/updates';
import { watchInstalling } from './screens/keeping/use-keeping';
import './ui/tokens.css';
import './ui/base.css';

startClock();
watchInstalling();
const place = document.getElementById('app');
if (place) render(<App />, place);
void registerServiceWorker();
