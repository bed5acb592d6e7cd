/**
 * The camera at work: holds the view, glides to a new one, and writes it to three's cameras. Not React: the view changes
 * on every frame of a drag, and nothing but the picture depends on it.
 */
import { type Camera, Matrix4, type OrthographicCamera, type PerspectiveCamera, Vector3 } from 'three';
import { DEGREES, distance } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { type Ball, type Border, EVEN_BORDER, fitBalls } from './fit';
import { ANGLE_OF_VIEW, between, eyeAxes, eyePosition, halfHeight, type View } from './view';

const GLIDE_MS = 380;
/** The near plane is never nearer than this share of the distance: the depth buffer would otherwise tell tubes apart badly. */
const NEAR_SHARE = 0.02;

export type Rig = ReturnType<typeof createRig>;

export function createRig(
  perspective: PerspectiveCamera,
  parallel: OrthographicCamera,
  options: {
    redraw(): void;
    /** Called when the projection changes: three's picture is drawn by another camera then. */
    take(camera: Camera): void;
    still(): boolean;
  },
) {
  let view: View = { target: [0, 0, 0], yaw: 1, pitch: 0.4, distance: 1500, parallel: false };
  let glide: { from: View; to: View; start: number | null } | null = null;
  let size = { width: 1, height: 1 };
  let border: Border = EVEN_BORDER;
  let balls: readonly Ball[] = [];
  let world: Ball = { at: [0, 0, 0], radius: 1000 };
  /** True while the picture still shows the last fit: then a new size is fitted anew. */
  let fitted = false;
  const listeners = new Set<(view: View) => void>();
  /** What the listeners were told last: a picture drawn again for what lies in it is no news to them. */
  let told: { readonly view: View; readonly size: typeof size } | null = null;

  const aspect = () => size.width / size.height;

  function set(next: View): void {
    if (next.parallel !== view.parallel) options.take(next.parallel ? parallel : perspective);
    view = next;
    options.redraw();
  }

  function go(to: View): void {
    if (options.still()) {
      glide = null;
      set(to);
    } else {
      glide = { from: { ...view, parallel: to.parallel }, to, start: null };
      set({ ...view, parallel: to.parallel });
    }
  }

  return {
    /** Where the camera is going; `drawn` is where it is. */
    view: () => glide?.to ?? view,
    drawn: () => view,
    size: () => size,
    /** Told of each change of view or size, on the frame that draws it. */
    listen(listener: (view: View) => void): () => void {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },

    /** A step of a drag: at once, ending any glide. */
    move(step: (view: View) => View): void {
      glide = null;
      fitted = false;
      set(step(view));
    },
    fitAll(look?: Partial<Pick<View, 'yaw' | 'pitch' | 'parallel'>>, instantly = false): void {
      const to = fitBalls(balls, { ...(glide?.to ?? view), ...look }, aspect(), border);
      if (instantly) {
        glide = null;
        set(to);
      } else go(to);
      fitted = true;
    },
    /** The same content has another size: a picture that was fitted stays fitted. */
    refit(): void {
      if (fitted) this.fitAll();
    },
    /** Perspective or not; a picture that was fitted stays fitted. */
    project(flat: boolean): void {
      if (fitted) this.fitAll({ parallel: flat });
      else go({ ...(glide?.to ?? view), parallel: flat });
    },
    look(at: Vec3, radius: number): void {
      fitted = false;
      const now = glide?.to ?? view;
      const to = fitBalls([{ at, radius }], now, aspect(), border);
      // Looking at something small keeps its neighbours in the picture.
      go({ ...to, distance: Math.max(to.distance, Math.min(now.distance, 320)) });
    },

    setSize(width: number, height: number): void {
      size = { width: Math.max(1, width), height: Math.max(1, height) };
      if (fitted) this.fitAll(undefined, true);
      options.redraw();
    },
    setBorder(next: Border): void {
      border = next;
    },
    /** @param content what a fit shows @param all everything that is drawn, for the depth range */
    setContent(content: readonly Ball[], all: Ball): void {
      balls = content;
      world = all;
    },

    /** Before each frame. @returns whether a glide goes on */
    frame(now: number): boolean {
      if (glide) {
        glide.start ??= now;
        const t = Math.min(1, (now - glide.start) / GLIDE_MS);
        view = between(glide.from, glide.to, t * t * (3 - 2 * t));
        if (t === 1) {
          view = glide.to;
          glide = null;
        }
      }
      apply();
      if (told?.view !== view || told.size !== size) {
        told = { view, size };
        for (const listener of listeners) listener(view);
      }
      return glide !== null;
    },
  };

  function apply(): void {
    const camera = view.parallel ? parallel : perspective;
    const { right, up, back } = eyeAxes(view);
    const eye = eyePosition(view);
    const reach = distance(eye, world.at) + world.radius;
    camera.matrixAutoUpdate = false;
    camera.position.set(...eye);
    camera.matrix
      .copy(new Matrix4().makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...back)))
      .setPosition(...eye);
    camera.quaternion.setFromRotationMatrix(camera.matrix);
    camera.matrixWorldNeedsUpdate = true;
    if (view.parallel) {
      const h = halfHeight(view.distance);
      parallel.top = h;
      parallel.bottom = -h;
      parallel.right = h * aspect();
      parallel.left = -h * aspect();
      parallel.near = -reach;
      parallel.far = reach;
      parallel.updateProjectionMatrix();
    } else {
      perspective.fov = ANGLE_OF_VIEW * DEGREES;
      perspective.aspect = aspect();
      perspective.near = Math.max(reach - 2 * world.radius, Math.min(view.distance, reach) * NEAR_SHARE, 1);
      perspective.far = reach;
      perspective.updateProjectionMatrix();
    }
    camera.updateMatrixWorld(true);
  }
}
