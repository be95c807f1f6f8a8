/**
 * A message that appears when a field is left would move the page between a finger's down and up, and the tap would land
 * beside its mark. It waits until the tap has arrived.
 */
let byPointer = false;

if (typeof window !== 'undefined') {
  for (const type of ['pointerdown', 'keydown'] as const)
    window.addEventListener(
      type,
      () => {
        byPointer = type === 'pointerdown';
      },
      { capture: true },
    );
}

/** Runs at once when a key moved the focus; after the click when a finger did. */
export function afterTap(run: () => void): void {
  if (byPointer) document.addEventListener('click', run, { once: true });
  else run();
}
