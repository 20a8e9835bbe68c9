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
  }
  export class Matrix4 {
    makeRotationAxis(axis: Vector3, angle: number): this;
    setPosition(x: number, y: number, z: number): this;
  }
  export class Object3D {
    position: Vector3;
    matrixWorld: Matrix4;
    add(object: Object3D): this;
    rotateOnAxis(axis: Vector3, angle: number): this;
    updateMatrixWorld(force?: boolean): void;
  }
}
