/** How much is left in the battery, where the browser tells it. */
import { useEffect, useState } from 'preact/hooks';

/** Of the Battery Status API only what is read here; the library of types has left it out. */
type Battery = EventTarget & { readonly level: number; readonly charging: boolean };

/** From here on down a clock may outlive its phone. Reasoned: systems begin to save power at 15 to 20 %. */
const lowFrom = 0.15;

const events = ['levelchange', 'chargingchange'] as const;

/** "12", in percent, while the battery is low and nothing charges it; null otherwise, or where it is not told. */
export function useLowBattery(): string | null {
  const [low, setLow] = useState<string | null>(null);
  useEffect(() => {
    let battery: Battery | null = null;
    let over = false;
    const read = (): void => {
      if (battery && !over)
        setLow(
          battery.level <= lowFrom && !battery.charging ? String(Math.round(battery.level * 100)) : null,
        );
    };
    const { getBattery } = navigator as { getBattery?: () => Promise<Battery> };
    void getBattery?.call(navigator).then(
      (found) => {
        battery = found;
        if (over) return;
        for (const event of events) found.addEventListener(event, read);
        read();
      },
      // Forbidden by a policy of the browser: as where it does not exist.
      () => undefined,
    );
    return () => {
      over = true;
      for (const event of events) battery?.removeEventListener(event, read);
    };
  }, []);
  return low;
}
