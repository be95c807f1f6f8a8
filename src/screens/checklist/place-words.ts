/** Words of where one works, and of what the app works out for that place. */
export const placeWords = {
  describe: 'Describe this place',
  describeSecond: 'Until then: place not written down',
  elsewhere: 'Somewhere else',
  elsewhereSecond: 'Place not written down: it stays visible',
  notWrittenDown: 'place not written down',
  another: 'Other place',
  moved: (from: string | undefined, to: string | undefined) =>
    from === to
      ? `${to} was described anew since the list was begun. Look round here.`
      : `The list was begun at ${from ?? 'a place that is not written down'}, and the phone is at ${
          to ?? 'a place that is not written down'
        } now. Look round here.`,
  workOut: 'Work it out',
  workOutAgain: 'Work it out again',
  workOutSecond: 'From the charge and this place',
  onlyWorkedOut: 'The app answers this one. Nobody can tap it.',
  worked: (when: string, where: string) => `Worked out ${when} for ${where}`,
  workedFrom: (when: string, where: string) => `ventilation check of ${when} for ${where}`,
  atMost: (from: string, portion: string) => `${from}: at most ${portion} of metal in a lot`,
  whereTitle: 'Where are you working?',
  whereSecond: 'A clearance holds for one place only.',
  at: 'Place',
  notChosen: 'Not chosen yet: the list asks',
  nowhere: 'No place is described yet.',
} as const;
