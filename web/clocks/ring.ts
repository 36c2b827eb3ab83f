const TONE_HZ = 880;
const TONES_S = [0, 0.25, 0.5] as const;
const TONE_S = 0.15;

let audio: AudioContext | undefined;

/** A browser makes no sound before the page was touched: called from a press, so that a later ring is heard. */
export function wakeSound(): void {
  audio ??= "AudioContext" in window ? new AudioContext() : undefined;
  void audio?.resume();
}

/** Three short tones, and a shake where the device can; silent where the page was not touched since it was opened. */
export function ring(): void {
  navigator.vibrate?.([200, 100, 200, 100, 200]);
  wakeSound();
  if (audio?.state !== "running") return;
  for (const afterS of TONES_S) {
    const [tone, loudness] = [audio.createOscillator(), audio.createGain()];
    tone.frequency.value = TONE_HZ;
    loudness.gain.value = 0.3;
    tone.connect(loudness).connect(audio.destination);
    tone.start(audio.currentTime + afterS);
    tone.stop(audio.currentTime + afterS + TONE_S);
  }
}
