/* global registerProcessor, AudioWorkletProcessor, currentFrame */

/** Sends each block of 128 frames with the number of its first. */
class Recorder extends AudioWorkletProcessor {
  process([[channel] = []]) {
    const samples = channel ? channel.slice() : new Float32Array(128);
    this.port.postMessage({ frame: currentFrame, samples });
    return true;
  }
}

registerProcessor("recorder", Recorder);
