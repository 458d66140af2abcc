const KEY = 'rutline.surveyor';

/** Who works on this device, as they want to be named with what they measure; empty until they say so. */
export function surveyor(): string {
  try {
    return localStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

/** Keeps the name on this device; it leaves it only with what is filed. */
export function nameSurveyor(name: string): void {
  try {
    localStorage.setItem(KEY, name.trim().slice(0, 200));
  } catch {
    return;
  }
}
