/** A pulse on save, in ms: inside the 5 to 50 ms in which a pulse belongs to its touch. */
const PULSE_MS = 20;
/** The tick on save lasts 30 ms, inside the 20 to 70 ms in which a sound belongs to its touch. */
const TICK = { hz: 1_800, forS: 0.03 } as const;
/** Two low tones for a caution, one after the other. */
const CAUTION_TONES = [
  { hz: 330, afterS: 0, forS: 0.25 },
  { hz: 247, afterS: 0.35, forS: 0.4 },
] as const;
const LOUDNESS = 0.2;
/** Without a ramp a tone begins and ends with a click of its own. */
const RAMP_S = 0.004;

/** Sound and pulse of this device. Each may be refused or missing: neither is ever the only cue. */
export interface Cues {
  readonly tick: () => void;
  readonly caution: () => void;
  readonly pulse: () => void;
}

/** Makes the sounds with the browser's own synthesiser, so that no file has to be there for them. */
export function browserCues(): Cues {
  let made: AudioContext | null = null;
  const sounding = (): AudioContext | null => {
    if (typeof AudioContext === 'undefined') return null;
    made ??= new AudioContext();
    // A browser holds sound back until the first touch; each later one asks again.
    if (made.state === 'suspended') made.resume().catch(() => undefined);
    return made;
  };
  return {
    tick: () => {
      const audio = sounding();
      if (audio !== null) tone(audio, TICK.hz, audio.currentTime, TICK.forS);
    },
    caution: () => {
      const audio = sounding();
      if (audio === null) return;
      for (const { hz, afterS, forS } of CAUTION_TONES) {
        tone(audio, hz, audio.currentTime + afterS, forS);
      }
    },
    pulse: () => {
      if ('vibrate' in navigator) navigator.vibrate(PULSE_MS);
    },
  };
}

function tone(audio: AudioContext, hz: number, startS: number, forS: number): void {
  const source = audio.createOscillator();
  const volume = audio.createGain();
  source.frequency.value = hz;
  volume.gain.setValueAtTime(0, startS);
  volume.gain.linearRampToValueAtTime(LOUDNESS, startS + RAMP_S);
  volume.gain.setValueAtTime(LOUDNESS, startS + forS - RAMP_S);
  volume.gain.linearRampToValueAtTime(0, startS + forS);
  source.connect(volume).connect(audio.destination);
  source.start(startS);
  source.stop(startS + forS);
}
