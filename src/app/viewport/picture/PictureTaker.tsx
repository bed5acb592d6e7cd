/** Inside the canvas: draws one frame at twice the size and hands it over with its labels as a PNG. */
import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import { documents } from '../../document';
import { TOKENS, useThemeStore } from '../../theme';
import type { Rig } from '../camera/rig';
import { halfHeight } from '../camera/view';
import type { composePicture } from './compose';
import { offerPicture, type PictureWish } from './pictureActions';

/** Pixels of the picture for each of the view. */
const FACTOR = 2;
const WHITE = '#ffffff';

type Props = { readonly rig: Rig; readonly page: RefObject<HTMLElement | null> };

export function PictureTaker({ rig, page }: Props) {
  const get = useThree((s) => s.get);
  useEffect(() => {
    const take = async (wish: PictureWish): Promise<Blob> => {
      const { theme } = useThemeStore.getState();
      const switched = wish.paper && theme === 'dark';
      try {
        if (switched) await show('light');
        // Loaded when it is asked for, and before the shot: nothing may wait between drawing and copying.
        const { composePicture } = await import('./compose');
        return await png(shoot(wish.paper, composePicture));
      } finally {
        if (switched) useThemeStore.setState({ theme });
      }
    };
    const shoot = (paper: boolean, compose: typeof composePicture): HTMLCanvasElement => {
      const { gl, scene, camera } = get();
      const element = page.current;
      if (!element) throw new Error('The 3D view has gone.');
      const tokens = TOKENS[useThemeStore.getState().theme];
      const { settled, fileName } = documents.store.getState();
      const before = gl.getPixelRatio();
      const { height } = rig.size();
      const view = rig.drawn();
      try {
        gl.setPixelRatio(FACTOR);
        gl.render(scene, camera);
        // In the same breath: the browser clears what was drawn before it shows the next frame.
        return compose({
          view: gl.domElement,
          page: element,
          factor: FACTOR,
          background: paper ? WHITE : tokens.paper,
          ink: tokens.ink,
          title: settled?.title || fileName,
          display: settled?.display ?? 'mm',
          pxPerMm: view.parallel ? height / (2 * halfHeight(view.distance)) : null,
        });
      } finally {
        gl.setPixelRatio(before);
        gl.render(scene, camera);
      }
    };
    return offerPicture(take);
  }, [get, rig, page]);
  return null;
}

/** In another theme for as long as the picture takes, without remembering it as chosen: until it was drawn so. */
async function show(theme: 'light' | 'dark'): Promise<void> {
  useThemeStore.setState({ theme });
  for (let i = 0; i < 3; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
}

const png = (canvas: HTMLCanvasElement): Promise<Blob> =>
  new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('The browser made no picture.'))), 'image/png'),
  );
