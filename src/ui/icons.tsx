/** The five places as drawn signs. They always stand with their word, so they are hidden from screen readers. */
import type { ComponentChildren } from 'preact';
import type { Place } from './places';

const drawings: Readonly<Record<Place, ComponentChildren>> = {
  today: (
    <>
      <circle cx="11" cy="11" r="8.4" fill="none" stroke="currentColor" stroke-width="2.4" />
      <path d="M11 11V5.4A5.6 5.6 0 0 0 5.4 11Z" fill="currentColor" />
    </>
  ),
  batches: (
    <>
      <path d="M3 11h12" stroke="currentColor" stroke-width="2.6" />
      <circle cx="3.6" cy="11" r="3.1" fill="currentColor" />
      <circle cx="10" cy="11" r="3.1" fill="currentColor" />
      <circle cx="17.4" cy="11" r="3.3" fill="none" stroke="currentColor" stroke-width="2.2" />
    </>
  ),
  containers: (
    <>
      <path
        d="M3.2 18.3V8.8c0-1.3.7-2 2-2h2.4l2.1-2h7.1a2 2 0 0 1 2 2v11.5a1.4 1.4 0 0 1-1.4 1.4H4.6a1.4 1.4 0 0 1-1.4-1.4Z"
        fill="none"
        stroke="currentColor"
        stroke-width="2"
      />
      <path d="M4.5 2.2h4.8" stroke="currentColor" stroke-width="2.4" />
      <path d="M3.4 12h15.2v7H3.4z" fill="currentColor" />
    </>
  ),
  papers: (
    <path
      d="M4 2.2h9.4L18 6.8v13H4ZM7.6 9h3.4M7.6 12.6h6.8M7.6 16.2h5"
      fill="none"
      stroke="currentColor"
      stroke-width="2.2"
    />
  ),
  record: (
    <path
      d="M4 2.2h14v17.6H4ZM7.4 2.2v17.6M11 7h4M11 11h4M11 15h4"
      fill="none"
      stroke="currentColor"
      stroke-width="2.2"
    />
  ),
};

export const PlaceIcon = ({ place }: { readonly place: Place }) => (
  <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
    {drawings[place]}
  </svg>
);
