import { afterEach, expect, test, vi } from 'vitest';
import { zoneNow } from '../../../src/app/clock';

afterEach(() => vi.restoreAllMocks());

test('the zone is that of the place where the phone is now, also when it travelled under an open page', () => {
  const options = Intl.DateTimeFormat().resolvedOptions();
  const there = vi.spyOn(Intl.DateTimeFormat.prototype, 'resolvedOptions');
  for (const timeZone of ['Europe/Paris', 'America/Los_Angeles']) {
    there.mockReturnValue({ ...options, timeZone });
    expect(zoneNow()).toBe(timeZone);
  }
});
