const ADDRESS = 'rutline.tiles';

/** The address of tiles as the user typed it, or null. */
export function typedAddress(): string | null {
  try {
    const typed = localStorage.getItem(ADDRESS);
    return typed !== null && isTileAddress(typed) ? typed : null;
  } catch {
    return null;
  }
}

/** Keeps an address for the next time that the page is loaded: this page was told what it may fetch when it began. */
export function typeAddress(template: string): void {
  localStorage.setItem(ADDRESS, template);
}

export function forgetAddress(): void {
  try {
    localStorage.removeItem(ADDRESS);
  } catch {
    return;
  }
}

export function isTileAddress(text: string): boolean {
  if (!['{z}', '{x}', '{y}'].every((part) => text.includes(part))) return false;
  try {
    const { protocol, hostname, username } = new URL(text);
    return protocol === 'https:' && username === '' && !/[{}]|%7B/i.test(hostname);
  } catch {
    return false;
  }
}
