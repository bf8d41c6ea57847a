import { useEffect } from 'react';

/** Speaks a sentence aloud by the device's own voice, each time that it is another one. */
export function useSpoken(sentence: string, on: boolean, locale: string): void {
  useEffect(() => {
    if (!on || sentence === '' || !('speechSynthesis' in window)) return;
    const spoken = new SpeechSynthesisUtterance(sentence);
    spoken.lang = locale;
    speechSynthesis.cancel();
    speechSynthesis.speak(spoken);
  }, [sentence, on, locale]);
}
