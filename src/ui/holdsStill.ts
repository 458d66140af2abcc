/** Keeps a finger that is put down on an element from scrolling the page; a style does not do it for parts of a picture. */
export function holdsStill(element: HTMLElement | SVGElement): { destroy(): void } {
  const stay = (event: Event) => event.preventDefault();
  element.addEventListener('touchstart', stay, { passive: false });
  return { destroy: () => element.removeEventListener('touchstart', stay) };
}
