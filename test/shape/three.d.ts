/** The little of three.js that checks the folding. */
declare module 'three' {
  export class Vector3 {
    constructor(x?: number, y?: number, z?: number);
    x: number;
    y: number;
    z: number;
    set(x: number, y: number, z: number): this;
    normalize(): this;
    applyMatrix4(matrix: Matrix4): this;
    clone(): Vector3;
    distanceTo(other: Vector3): number;
    divideScalar(by: number): this;
  }
  export class Matrix4 {
    makeRotationAxis(axis: Vector3, angle: number): this;
    makeRotationY(angle: number): this;
    makeTranslation(x: number, y: number, z: number): this;
    multiply(by: Matrix4): this;
    invert(): this;
    clone(): Matrix4;
    setPosition(x: number, y: number, z: number): this;
  }
  export class Object3D {
    position: Vector3;
    matrixWorld: Matrix4;
    add(object: Object3D): this;
    rotateOnAxis(axis: Vector3, angle: number): this;
    updateMatrixWorld(force?: boolean): void;
  }
  export class Vector2 {
    constructor(x: number, y: number);
  }
  export const ShapeUtils: {
    area(contour: Vector2[]): number;
    triangulateShape(contour: Vector2[], holes: Vector2[][]): [number, number, number][];
  };
  export class BufferGeometry {
    setFromPoints(points: Vector3[]): this;
    setIndex(index: number[]): this;
  }
  export class MeshBasicMaterial {
    constructor(look: { side: number });
  }
  export const DoubleSide: number;
  export class Mesh extends Object3D {
    constructor(geometry: BufferGeometry, material: MeshBasicMaterial);
    name: string;
  }
  export class Raycaster {
    set(origin: Vector3, direction: Vector3): void;
    intersectObjects(objects: Mesh[], deep: boolean): { distance: number; object: Mesh }[];
  }
}
