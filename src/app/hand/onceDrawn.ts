/** Calls back once what was just decided has been on the screen for a frame. @returns lets go of it */
export function onceDrawn(act: () => void): () => void {
  // Nothing is drawn behind another tab.
  if (document.hidden) {
    const timer = setTimeout(act);
    return () => clearTimeout(timer);
  }
  let frame = requestAnimationFrame(() => {
    frame = requestAnimationFrame(act);
  });
  return () => cancelAnimationFrame(frame);
}
