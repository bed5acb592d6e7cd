/**
 * `frustumShape`'s signed distance with its slope in closed form, on plain numbers: for searches that ask both a million
 * times. Any unit of length; negative inside.
 */
import type { Vec3 } from '../../shared/vec3';

export class FrustumField {
  /** Of the place asked about last: the slope, the height along the axis, and the place seen from the axis. */
  gx = 0;
  gy = 0;
  gz = 0;
  h = 0;
  rx = 0;
  ry = 0;
  rz = 0;
  private px = 0;
  private py = 0;
  private pz = 0;
  private ax = 0;
  private ay = 0;
  private az = 1;
  private length = 0;
  private start = 0;
  private slope = 0;
  private slant = 1;

  set(position: Vec3, axis: Vec3, length: number, startRadius: number, endRadius: number): void {
    [this.px, this.py, this.pz] = position;
    [this.ax, this.ay, this.az] = axis;
    this.length = length;
    this.start = startRadius;
    this.slope = endRadius - startRadius;
    this.slant = Math.sqrt(this.slope * this.slope + length * length);
  }

  at(x: number, y: number, z: number): number {
    const { ax, ay, az, length, start, slope, slant } = this;
    const dx = x - this.px;
    const dy = y - this.py;
    const dz = z - this.pz;
    const h = dx * ax + dy * ay + dz * az;
    const rx = dx - h * ax;
    const ry = dy - h * ay;
    const rz = dz - h * az;
    const rho = Math.sqrt(rx * rx + ry * ry + rz * rz);
    this.h = h;
    this.rx = rx;
    this.ry = ry;
    this.rz = rz;
    const wall = ((rho - start) * length - h * slope) / slant;
    const beyond = h < length - h ? -h : h - length;
    // The slope in the half plane through the axis: outward, and along.
    let out = 0;
    let along = 0;
    let value = 0;
    if (wall <= 0 && beyond <= 0) {
      value = Math.max(wall, beyond);
      if (wall > beyond) {
        out = length / slant;
        along = -slope / slant;
      } else along = h < length - h ? -1 : 1;
    } else {
      const t = Math.min(1, Math.max(0, ((rho - start) * slope + h * length) / (slant * slant)));
      let du = rho - start - t * slope;
      let dh = h - t * length;
      let squared = du * du + dh * dh;
      const overStart = Math.max(0, rho - start);
      const toStart = overStart * overStart + h * h;
      if (toStart < squared) {
        squared = toStart;
        du = overStart;
        dh = h;
      }
      const past = rho - start - slope;
      const overEnd = Math.max(0, past);
      const toEnd = overEnd * overEnd + (h - length) * (h - length);
      if (toEnd < squared) {
        squared = toEnd;
        du = overEnd;
        dh = h - length;
      }
      value = Math.sqrt(squared);
      if (value > 0) {
        out = du / value;
        along = dh / value;
      } else if (wall >= beyond) {
        out = length / slant;
        along = -slope / slant;
      } else along = h < length - h ? -1 : 1;
    }
    const outward = rho > 0 ? out / rho : 0;
    this.gx = outward * rx + along * ax;
    this.gy = outward * ry + along * ay;
    this.gz = outward * rz + along * az;
    return value;
  }

  /** Along the axis, toward the end that is nearer to the place asked about last. */
  wayOut(): Vec3 {
    const sign = this.h < this.length - this.h ? -1 : 1;
    return [sign * this.ax, sign * this.ay, sign * this.az];
  }
}
