/** Reads a text aloud while it stands on the screen, where the phone has a voice; elsewhere nothing happens. */
import { useEffect } from 'preact/hooks';

/** @param text null: silence @param lang language of the text, e.g. "en" */
export function useSpoken(text: string | null, lang: string): void {
  useEffect(() => {
    const { speechSynthesis, SpeechSynthesisUtterance } = globalThis;
    if (text === null || speechSynthesis === undefined || SpeechSynthesisUtterance === undefined) return;
    const said = new SpeechSynthesisUtterance(text);
    said.lang = lang;
    speechSynthesis.speak(said);
    return () => speechSynthesis.cancel();
  }, [text, lang]);
}

/** Whether this phone can read aloud at all. */
export const canSpeak = (): boolean => globalThis.speechSynthesis !== undefined;
