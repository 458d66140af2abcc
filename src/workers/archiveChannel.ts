/** By this name windows tell each other that the archive changed. */
export const CHANNEL = 'rutline.archive';
