import { render } from 'preact';
import { rest } from './app/ahead';
import { FirstPage, isFirstVisit, NotLoaded } from './app/first-visit';
import './ui/tokens.css';
import './ui/base.css';

/** A first visit sees its first page at once; whoever comes back sees the place they left, which needs the record. */
async function start(place: HTMLElement): Promise<void> {
  const meanwhile = (await isFirstVisit()) ? <FirstPage /> : null;
  if (meanwhile) render(meanwhile, place);
  try {
    (await rest).begin(place, meanwhile);
  } catch (cause) {
    console.warn('the app did not come up', cause);
    render(<NotLoaded />, place);
  }
}

const place = document.getElementById('app');
if (place) void start(place);
