let told: boolean | null = null;

/** Whether this device can draw maps, which is done by WebGL 2 alone. */
export function hasWebGl(): boolean {
  told ??= document.createElement('canvas').getContext('webgl2') !== null;
  return told;
}
