/** Telephone numbers as addresses that the phone itself opens: only what can be dialled of what a person wrote. */

const dialled = (number: string): string => number.replaceAll(/[^\d+*#]/g, '');

export const telephone = (number: string): string => `tel:${dialled(number)}`;

/** RFC 5724: the body is percent-encoded. @param number null leaves the recipient to the person */
export const textMessage = (number: string | null, body: string): string =>
  `sms:${number === null ? '' : dialled(number)}?body=${encodeURIComponent(body)}`;
