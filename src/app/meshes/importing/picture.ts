/**
 * The scan in the import sheet: drawn on demand in the file's own frame and unit, turned about by hand, clicked on. Its
 * triangles go to the graphics card as they are; each is lit flat, so they need no normals.
 */
import {
  AmbientLight,
  Box3,
  Box3Helper,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  PerspectiveCamera,
  Plane,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { knownTree, rayHit, type TriangleSoup } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { boxOf, type Corners } from '../facts';

export type Colours = { readonly mesh: string; readonly line: string; readonly accent: string };

export type Picture = {
  show(soup: TriangleSoup): void;
  /** In the file's unit; null: all of it. */
  crop(corners: Corners | null): void;
  /** Pairs of places, in the file's unit: the header as it would stand. */
  lines(pairs: Float32Array): void;
  paint(colours: Colours): void;
  resize(): void;
  /** Where a place is on the canvas, px. */
  see(place: Vec3): readonly [number, number];
  /** The first place on the scan under a point of the canvas, px. */
  hit(x: number, y: number): Vec3 | null;
  end(): void;
};

/** Toward a corner from outside, above. */
const FROM = new Vector3(1, -1.3, 0.8).normalize();
const FIELD = 32;

/** @param onDrawn told after each picture */
export function createPicture(canvas: HTMLCanvasElement, onDrawn: () => void): Picture {
  const renderer = new WebGLRenderer({ canvas, alpha: true, antialias: true });
  renderer.localClippingEnabled = true;
  const scene = new Scene();
  const camera = new PerspectiveCamera(FIELD);
  camera.up.set(0, 0, 1);
  const light = new DirectionalLight('#ffffff', 2.2);
  light.position.set(0.3, 0.5, 1);
  camera.add(light);
  scene.add(camera, new AmbientLight('#ffffff', 0.9));
  const material = new MeshLambertMaterial({ flatShading: true, side: DoubleSide });
  const mesh = new Mesh(new BufferGeometry(), material);
  mesh.frustumCulled = false;
  const pen = new LineBasicMaterial();
  const ways = new LineSegments(new BufferGeometry(), pen);
  ways.frustumCulled = false;
  const box = new Box3Helper(new Box3());
  box.visible = false;
  scene.add(mesh, ways, box);
  const controls = new OrbitControls(camera, canvas);
  controls.enableDamping = false;
  let soup: TriangleSoup | null = null;
  let cropped: Corners | null = null;
  let frame = 0;

  const draw = () => {
    frame = 0;
    renderer.render(scene, camera);
    onDrawn();
  };
  const redraw = () => {
    frame ||= requestAnimationFrame(draw);
  };
  controls.addEventListener('change', redraw);

  const resize = () => {
    const { clientWidth: width, clientHeight: height } = canvas;
    if (width === 0 || height === 0) return;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(width, height, false);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    redraw();
  };

  const whole = (low: Vec3, high: Vec3) => {
    const middle = new Vector3(...low).add(new Vector3(...high)).multiplyScalar(0.5);
    const radius = Math.max(middle.distanceTo(new Vector3(...high)), 1e-9);
    const far = (1.15 * radius) / Math.sin((FIELD * Math.PI) / 360);
    camera.near = radius / 200;
    camera.far = far + 40 * radius;
    camera.position.copy(middle).addScaledVector(FROM, far);
    controls.target.copy(middle);
    camera.updateProjectionMatrix();
    controls.update();
    redraw();
  };

  return {
    show(next) {
      soup = next;
      mesh.geometry.dispose();
      mesh.geometry = new BufferGeometry();
      mesh.geometry.setAttribute('position', new BufferAttribute(next, 3));
      const [low, high] = boxOf(next);
      whole(low, high);
    },
    crop(corners) {
      cropped = corners;
      box.visible = corners !== null;
      material.clippingPlanes = null;
      if (corners) {
        const [low, high] = corners;
        box.box.set(new Vector3(...low), new Vector3(...high));
        material.clippingPlanes = [0, 1, 2].flatMap((axis) => {
          const way = new Vector3().setComponent(axis, 1);
          return [new Plane(way, -low[axis]!), new Plane(way.clone().negate(), high[axis]!)];
        });
      }
      redraw();
    },
    lines(pairs) {
      ways.geometry.dispose();
      ways.geometry = new BufferGeometry();
      ways.geometry.setAttribute('position', new BufferAttribute(pairs, 3));
      redraw();
    },
    paint(colours) {
      material.color = new Color(colours.mesh);
      pen.color = new Color(colours.accent);
      (box.material as LineBasicMaterial).color = new Color(colours.line);
      redraw();
    },
    resize,
    see(place) {
      const p = new Vector3(...place).project(camera);
      return [((p.x + 1) / 2) * canvas.clientWidth, ((1 - p.y) / 2) * canvas.clientHeight];
    },
    hit(x, y) {
      const tree = soup && knownTree(soup);
      if (!tree) return null;
      const raycaster = new Raycaster();
      const at = new Vector2((2 * x) / canvas.clientWidth - 1, 1 - (2 * y) / canvas.clientHeight);
      raycaster.setFromCamera(at, camera);
      const { origin, direction } = raycaster.ray;
      const counts = (p: Vec3) => cropped === null || p.every((v, i) => v >= cropped![0][i]! && v <= cropped![1][i]!);
      return rayHit(tree, origin.toArray() as Vec3, direction.toArray() as Vec3, counts)?.at ?? null;
    },
    end() {
      cancelAnimationFrame(frame);
      controls.dispose();
      mesh.geometry.dispose();
      ways.geometry.dispose();
      box.dispose();
      material.dispose();
      pen.dispose();
      renderer.dispose();
      renderer.forceContextLoss();
    },
  };
}
