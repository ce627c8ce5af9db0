/** The 3D view of the report: turn, zoom, take apart, hide covers, show beams, pick a part. Bundled into the page. */
import {
  AmbientLight,
  Box3,
  Color,
  CylinderGeometry,
  DirectionalLight,
  InstancedMesh,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  OrthographicCamera,
  Quaternion,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { geometryOf, unpack } from './meshes.js';
import type { SceneData } from './scene-data.js';

const PICKED = new Color('#ffd54a');
/** Turned by one press of an arrow key [rad], and zoomed by one of + and −. */
const TURN = Math.PI / 18;
const ZOOM = 1.2;

const byId = <T extends HTMLElement>(id: string) => document.getElementById(id) as T;

async function start(): Promise<void> {
  const data = JSON.parse(byId('scene-data').textContent ?? '') as SceneData;
  const stage = byId<HTMLDivElement>('stage');
  const renderer = new WebGLRenderer({ antialias: true, alpha: true, preserveDrawingBuffer: true });
  const canvas = renderer.domElement;
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', 'The kit in three dimensions. Arrow keys turn it, plus and minus zoom.');
  const block = await unpack(data);

  const scene = new Scene();
  const whole = new Box3();
  const base = data.placements.map(({ matrix }) => new Matrix4().fromArray(matrix as number[]).transpose());
  const models = data.parts.map((part, p) => {
    const geometry = geometryOf(part, block);
    geometry.computeBoundingBox();
    const own = data.placements.flatMap((placement, i) => (placement.part === p ? [i] : []));
    const mesh = new InstancedMesh(geometry, new MeshLambertMaterial({ color: 0xffffff }), own.length);
    own.forEach((placement, k) => {
      mesh.setMatrixAt(k, base[placement]!);
      mesh.setColorAt(k, new Color(part.colour));
      whole.union(geometry.boundingBox!.clone().applyMatrix4(base[placement]!));
    });
    mesh.frustumCulled = false;
    scene.add(mesh);
    return { part, mesh, own };
  });
  const beams = data.beams.map(({ from, to, diameter }) => {
    const [a, b] = [new Vector3(...from), new Vector3(...to)];
    const length = a.distanceTo(b);
    const rod = new Mesh(
      new CylinderGeometry(diameter / 2, diameter / 2, length, 16),
      new MeshBasicMaterial({ color: '#e23c30', transparent: true, opacity: 0.75 }),
    );
    rod.position.copy(a).add(b).multiplyScalar(0.5);
    rod.quaternion.copy(new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), b.sub(a).normalize()));
    scene.add(rod);
    return rod;
  });

  const size = whole.getSize(new Vector3()).length();
  const middle = whole.getCenter(new Vector3());
  const camera = new OrthographicCamera(-1, 1, 1, -1, 0.1, 20 * size);
  camera.up.set(0, 0, 1);
  camera.position.copy(middle).add(new Vector3(-0.6, -1, 0.8).setLength(5 * size));
  const key = new DirectionalLight(0xffffff, 2);
  scene.add(new AmbientLight(0xffffff, 1.3), key);
  const controls = new OrbitControls(camera, canvas);
  controls.target.copy(middle);
  controls.enableDamping = false;
  controls.update();
  controls.addEventListener('change', draw);

  function draw(): void {
    key.position
      .copy(camera.position)
      .sub(controls.target)
      .add(new Vector3(-0.3 * size, 0, 2 * size));
    renderer.render(scene, camera);
  }
  function resize(): void {
    const { clientWidth: width, clientHeight: height } = stage;
    if (width === 0 || height === 0) return;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(width, height, false);
    // The kit fits however it is turned, by its box's diagonal.
    const half = 0.5 * size * Math.max(1, width / height);
    camera.left = -half;
    camera.right = half;
    camera.top = (half * height) / width;
    camera.bottom = -camera.top;
    camera.updateProjectionMatrix();
    draw();
  }

  const apart = byId<HTMLInputElement>('apart');
  apart.addEventListener('input', () => {
    const share = Number(apart.value) / 100;
    for (const { mesh, own } of models) {
      own.forEach((i, k) => {
        const [x, y, z] = data.placements[i]!.apart;
        mesh.setMatrixAt(k, new Matrix4().makeTranslation(share * x, share * y, share * z).multiply(base[i]!));
      });
      mesh.instanceMatrix.needsUpdate = true;
      mesh.boundingSphere = null;
    }
    draw();
  });
  const covers = byId<HTMLInputElement>('covers');
  const shown = byId<HTMLInputElement>('beams');
  const show = () => {
    for (const { mesh, part } of models) mesh.visible = !part.cover || covers.checked;
    for (const rod of beams) rod.visible = shown.checked;
    draw();
  };
  covers.addEventListener('change', show);
  shown.addEventListener('change', show);

  const pick = byId<HTMLSelectElement>('pick');
  const about = byId<HTMLParagraphElement>('picked');
  let picked: number | null = null;
  function choose(placement: number | null): void {
    picked = placement;
    for (const { mesh, part, own } of models) {
      own.forEach((i, k) => {
        mesh.setColorAt(k, i === picked ? PICKED : new Color(part.colour));
      });
      if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true;
    }
    pick.value = placement === null ? '' : String(placement);
    if (placement === null) about.textContent = 'Nothing picked. Click a part, or choose it in the list.';
    else {
      const { name, part: p } = data.placements[placement]!;
      const { title, kind, material, massG, quantity, file } = data.parts[p]!;
      about.textContent = `${name}: ${title}, ${kind}, ${material}, ${massG.toFixed(2)} g${kind === 'printed' ? ' if solid' : ''}, ${quantity} in the kit, ${file}`;
    }
    draw();
  }
  data.placements.forEach(({ name }, i) => {
    pick.append(new Option(name, String(i)));
  });
  pick.addEventListener('change', () => choose(pick.value === '' ? null : Number(pick.value)));

  let pressed: readonly [number, number] | null = null;
  canvas.addEventListener('pointerdown', ({ clientX, clientY }) => {
    pressed = [clientX, clientY];
  });
  canvas.addEventListener('pointerup', ({ clientX, clientY }) => {
    // A drag turns the kit; only a press that stays where it is picks.
    if (!pressed || Math.hypot(clientX - pressed[0], clientY - pressed[1]) > 4) return;
    const { left, top, width, height } = canvas.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((2 * (clientX - left)) / width - 1, 1 - (2 * (clientY - top)) / height), camera);
    const hit = ray.intersectObjects(models.filter(({ mesh }) => mesh.visible).map(({ mesh }) => mesh))[0];
    const model = models.find(({ mesh }) => mesh === hit?.object);
    choose(model && hit?.instanceId !== undefined ? model.own[hit.instanceId]! : null);
  });
  canvas.addEventListener('keydown', (event) => {
    const turns: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-TURN, 0],
      ArrowRight: [TURN, 0],
      ArrowUp: [0, TURN],
      ArrowDown: [0, -TURN],
    };
    const turn = turns[event.key];
    if (turn) turnBy(...turn);
    else if (event.key === '+' || event.key === '=') zoomBy(ZOOM);
    else if (event.key === '-') zoomBy(1 / ZOOM);
    else return;
    event.preventDefault();
  });
  function turnBy(around: number, up: number): void {
    const from = camera.position.clone().sub(controls.target);
    from.applyAxisAngle(new Vector3(0, 0, 1), around);
    const side = new Vector3(0, 0, 1).cross(from).normalize();
    const raised = from.clone().applyAxisAngle(side, -up);
    const lean = raised.angleTo(new Vector3(0, 0, 1));
    if (lean > 0.02 && lean < Math.PI - 0.02) from.copy(raised);
    camera.position.copy(controls.target).add(from);
    controls.update();
    draw();
  }
  function zoomBy(factor: number): void {
    camera.zoom = Math.min(20, Math.max(0.4, camera.zoom * factor));
    camera.updateProjectionMatrix();
    draw();
  }
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-view]'))
    button.addEventListener('click', () => {
      const [x, y, z] = button.dataset.view!.split(',').map(Number) as [number, number, number];
      camera.position.copy(middle).add(new Vector3(x, y, z).setLength(5 * size));
      controls.target.copy(middle);
      camera.zoom = 1;
      camera.updateProjectionMatrix();
      controls.update();
      draw();
    });
  byId('closer').addEventListener('click', () => zoomBy(ZOOM));
  byId('farther').addEventListener('click', () => zoomBy(1 / ZOOM));

  stage.replaceChildren(canvas);
  new ResizeObserver(resize).observe(stage);
  show();
  choose(null);
  resize();
  byId('view-tools').hidden = false;
  document.documentElement.dataset.view = 'ready';
}

start().catch(() => {
  // No WebGL here: the picture stays, and the page does without.
  document.documentElement.dataset.view = 'picture';
});
