import { describe, expect, it } from 'vitest';
import { type MessageParts, messageText } from '../../../src/screens/clocks/message-text';
import { textMessage } from '../../../src/screens/telephone';

const all: MessageParts = {
  from: 'Maren',
  step: 'Start the leach, B-18',
  place: 'Ducted hood',
  workshop: {
    name: 'Invented workshop',
    address: 'Weir Yard 6\nOstermill',
    mapReference: '4471 0926',
    emergencyNumber: '112',
  },
  until: '12:26',
  ring: { at: '11:15' },
  to: 'Tobias',
  phone: '+47 22 00 00 01',
  invented: false,
};

describe('the message to whoever checks from elsewhere', () => {
  it('says who, what, where, until when, when to ring, and what to do when nobody answers', () => {
    expect(messageText(all).split('\n')).toEqual([
      'Maren, Invented workshop.',
      'What: Start the leach, B-18.',
      'Where: Ducted hood. Weir Yard 6, Ostermill. Map 4471 0926.',
      'Cleared until 12:26.',
      'Tobias, please ring Maren at 11:15, +47 22 00 00 01.',
      'No answer? Ring again at once. Still none: call 112, the emergency number there, and give the address. ' +
        'Say: “Nitric acid, perhaps brown gas. Somebody may be hurt.” Do not go in yourself.',
    ]);
  });

  it('leaves out what nobody wrote down, and never an empty line, a gap or the word undefined for it', () => {
    const sparse = messageText({
      ...all,
      place: undefined,
      workshop: undefined,
      until: null,
      ring: null,
      to: undefined,
      phone: null,
    });
    expect(sparse.split('\n')).toEqual([
      'Maren.',
      'What: Start the leach, B-18.',
      'Please keep your phone at hand for Maren.',
      expect.stringContaining('call the emergency number of the place'),
    ]);
    expect(sparse).not.toMatch(/undefined|null| {2}/);
  });

  it('asks for a call at once when the time for it has passed', () => {
    expect(messageText({ ...all, ring: 'now' })).toContain('Tobias, please ring Maren now, +47 22 00 00 01.');
  });

  it('cannot be taken for true when it comes out of the invented workshop', () => {
    expect(messageText({ ...all, invented: true })).toMatch(/^A trial in an invented workshop\./);
  });

  it('promises nobody that anything is well', () => {
    expect(messageText(all)).not.toMatch(/safe|compliant|all well/i);
  });
});

describe('a text message', () => {
  it('goes to what can be dialled, its words escaped as RFC 5724 asks', () => {
    // The form of the example in RFC 5724, section 2.2: sms:+15105550101?body=hello%20there
    expect(textMessage('+1 (510) 555-0101', 'hello there')).toBe('sms:+15105550101?body=hello%20there');
    expect(textMessage(null, 'a&b\n#')).toBe('sms:?body=a%26b%0A%23');
  });
});
