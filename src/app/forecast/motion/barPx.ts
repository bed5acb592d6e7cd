/** How high the bar of the play is, by how wide the viewport is: what it hides of the picture. px */
export const motionBarPx = (width: number): number => (width > 640 ? 122 : 236);
