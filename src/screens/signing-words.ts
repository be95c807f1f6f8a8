/** Words of a field to sign in. */
export const signingWords = {
  name: 'Who signs',
  nameMissing: 'Write the name of who signed: nobody can read the other.',
  draw: 'Draw with a finger',
  nothingDrawn: 'Nothing drawn yet',
  drawn: (name: string) =>
    name.trim() === '' ? 'A signature was drawn' : `Signature of ${name.trim()}, drawn`,
  clear: 'Clear',
  putBack: 'Put it back',
  inLetters: 'Sign in letters',
  inLettersSecond: 'Instead of drawing: the name above counts as the signature',
  lettersShown: 'Signed in letters, not drawn',
  signedBy: (name: string, when: string) => `${name}, ${when}`,
  inLettersBy: (name: string, when: string) => `${name}, signed in letters, ${when}`,
};
