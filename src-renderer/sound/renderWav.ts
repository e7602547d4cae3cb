import type { Onlooker } from "./onlooker.ts";
import { type Rendering, renderOffline } from "./renderOffline.ts";
import { type Bits, writeWav } from "./writeWav.ts";

/** The share of the time that goes into the sound itself; the rest writes the file. */
const SOUNDING = 0.8;

/** A stretch of the score as the bytes of a WAV file in stereo. */
export const renderWav = async (
  rendering: Rendering,
  bits: Bits,
  { progress, signal }: Onlooker,
): Promise<ArrayBuffer> => {
  const sounding: Onlooker = { signal, progress: (share) => progress(share * SOUNDING) };
  const sound = await renderOffline(rendering, sounding);
  const channels = [sound.getChannelData(0), sound.getChannelData(1)];
  return await writeWav({ sampleRate: sound.sampleRate, channels }, bits, {
    signal,
    progress: (share) => progress(SOUNDING + share * (1 - SOUNDING)),
  });
};
