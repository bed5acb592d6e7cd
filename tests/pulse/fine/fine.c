/*
 * A second opinion on rigs: the contract of the rig document solved by another method than ours, on a fine grid, slowly. It shares
 * nothing with src/pulse. SI units. Longer than most files so that it stays one that any C11 compiler takes: cc -O3 fine.c -lm
 *
 * Method of lines: WENO5 (Jiang and Shu 1996) on the local characteristic variables of each cell, the exact solution of the Riemann
 * problem at every face (Godunov 1959; formulas as in Toro 2009, chapter 4), three-stage strong-stability-preserving Runge–Kutta
 * (Shu and Osher 1988). The last two cells at each end are linear with a limiter. Ends are bisected on the exact wave.
 *
 * Where the contract leaves room, this is what was read:
 *  - a pipe that feeds a junction, or leaves an open end, at sonic speed keeps its own pressure at the plane;
 *  - what enters a pipe, from anywhere, is at most sonic at the plane;
 *  - Haaland's factor is Darcy's, a quarter of it Fanning's; below a Reynolds number of 2300 the flow is laminar, 16 / Re;
 *  - viscosity is taken at the static temperature, density and velocity of the cell; a slant wall's area counts as straight;
 *  - an orifice wider than the bore counts as the bore; before the first instant of its table an opening has the first area;
 *  - beyond the outermost cell centres a probe goes on along the line of the two nearest.
 *
 * Use: fine MULTIPLIER < FLAT > CSV, where FLAT comes from flatten.mjs. Standard error tells the drift of mass and energy.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static double G, R, CP, PAMB, TAMB;  /* gas and ambient */
static double E1, E2, E3, G6;        /* exponents of γ that return */

typedef struct { double rho, u, p; } State;
typedef struct { double mass, momentum, energy; } Flux;
typedef struct {
  int n, knees, first;
  double length, dx, friction, roughness, wall; /* roughness < 0: constant friction; wall < 0: adiabatic */
  double *knee;                                 /* x, diameter */
  double *face, *volume, *diameter;             /* areas at faces, volumes, diameters at centres */
} Pipe;
typedef struct { int pipe, finish; } Side;
typedef struct {
  char kind; /* c, o, t, j, v */
  int n, steps, store;
  Side side[16];
  double volume, cd, *area; /* area: time, m² */
} End;

static Pipe *pipes; static End *ends; static int pipeCount, endCount, cells, stores;
static double *U, *U0, *DU;      /* conserved per m³ (3 a cell), then kg and J of each vessel */
static State *W, *lower, *upper; /* primitive, and at either face of each cell */
static double leftMass, leftEnergy, fromWalls; /* rates of one stage */
static long soundEntries, soundFeeds; /* how often an entry or a junction's feed was held at sonic speed */

static void *room(size_t count, size_t size) {
  void *p = calloc(count + 1, size);
  if (!p) { fprintf(stderr, "no room\n"); exit(1); }
  return p;
}
static double number(void) {
  double x;
  if (scanf("%lf", &x) != 1) { fprintf(stderr, "the flat rig ends early\n"); exit(1); }
  return x;
}
static double sound(State s) { return sqrt(G * s.p / s.rho); }
static double onTable(const double *t, int n, double x) {
  if (x <= t[0]) return t[1];
  for (int i = 1; i < n; i++)
    if (x < t[2 * i]) return t[2 * i - 1] + (t[2 * i + 1] - t[2 * i - 1]) * (x - t[2 * i - 2]) / (t[2 * i] - t[2 * i - 2]);
  return t[2 * n - 1];
}

/* ---- the exact wave: s is the gas behind, u positive toward the plane ---- */

/* How much slower s becomes across its wave to the pressure p. */
static double slower(State s, double p) {
  if (p > s.p) return (p - s.p) * sqrt(2 / ((G + 1) * s.rho) / (p + (G - 1) / (G + 1) * s.p));
  return 2 * sound(s) / (G - 1) * (pow(p / s.p, E1) - 1);
}
static double denser(State s, double p) {
  const double ratio = p / s.p;
  return ratio > 1 ? s.rho * (ratio + G6) / (G6 * ratio + 1) : s.rho * pow(ratio, 1 / G);
}
/* What is on the plane where s goes out to the pressure p: beyond the wave, in it or before it. */
static State onPlane(State s, double p) {
  const double a = sound(s);
  if (p > s.p) {
    if (s.u - a * sqrt((G + 1) / (2 * G) * p / s.p + E1) > 0) return s;
  } else {
    if (s.u - a > 0) return s;
    const double at = a * pow(p / s.p, E1);
    if (s.u - slower(s, p) - at > 0) {
      const double c = 2 / (G + 1) * (a + (G - 1) / 2 * s.u);
      return (State){s.rho * pow(c / a, E2), c, s.p * pow(c / a, E3)};
    }
  }
  return (State){denser(s, p), s.u - slower(s, p), p};
}
static double stopPressure(State s) { /* where its wave brings it to rest */
  double lo = s.p, hi = s.p;
  if (s.u > 0) while (s.u - slower(s, hi) > 0) hi *= 2;
  else while (s.u - slower(s, lo) < 0 && lo > 1e-9 * s.p) lo *= 0.5;
  for (int i = 0; i < 200 && hi - lo > 1e-15 * hi; i++) {
    const double m = 0.5 * (lo + hi);
    if (s.u - slower(s, m) > 0) lo = m; else hi = m;
  }
  return 0.5 * (lo + hi);
}
static Flux fluxOf(State s) {
  const double m = s.rho * s.u;
  return (Flux){m, m * s.u + s.p, m * (CP * s.p / (s.rho * R) + 0.5 * s.u * s.u)};
}

static Flux riemann(State l, State r) {
  const double al = sound(l), ar = sound(r), zl = l.rho * al, zr = r.rho * ar;
  double p = (zr * l.p + zl * r.p + zl * zr * (l.u - r.u)) / (zl + zr);
  const double weak = 1e-3;
  if (fabs(r.p - l.p) < weak * l.p && fabs(r.u - l.u) < weak * al) {
    /* Weak waves are acoustic to a part in a million; near sonic speed they are not trusted. */
    const double u = (zl * l.u + zr * r.u + l.p - r.p) / (zl + zr);
    if (fabs(fabs(u) - al) > 0.01 * al && fabs(fabs(u) - ar) > 0.01 * ar) {
      if (u >= al) return fluxOf(l);
      if (u <= -ar) return fluxOf(r);
      return u >= 0 ? fluxOf((State){l.rho + (p - l.p) / (al * al), u, p}) : fluxOf((State){r.rho + (p - r.p) / (ar * ar), u, p});
    }
  }
  const State m = {r.rho, -r.u, r.p};
  if (!(p > 0)) p = 1e-6 * fmin(l.p, r.p);
  for (int i = 0; i < 60; i++) {
    const double f = slower(l, p) + slower(m, p) + r.u - l.u;
    const double d = 1e-6 * p, g = (slower(l, p + d) + slower(m, p + d) + r.u - l.u - f) / d;
    double next = p - f / g;
    if (!(next > 0.05 * p)) next = 0.05 * p;
    const double moved = fabs(next - p);
    p = next;
    if (moved < 1e-11 * p) break;
  }
  if (l.u - slower(l, p) >= 0) return fluxOf(onPlane(l, p));
  Flux f = fluxOf(onPlane(m, p));
  f.mass = -f.mass; f.energy = -f.energy;
  return f;
}

/* ---- ends: s just inside, u positive out of the pipe; fluxes likewise ---- */

/* The plane where gas of stagnation enthalpy h enters at pressure p with the speed v, at most sonic. */
static State entering(double h, double p, double v) {
  const double most = sqrt(2 * (G - 1) / (G + 1) * h);
  if (v > most) { v = most; soundEntries++; }
  return (State){p / (R * (h - 0.5 * v * v) / CP), -v, p};
}
static Flux openEnd(State s) {
  if (s.u - slower(s, PAMB) >= 0) return fluxOf(onPlane(s, PAMB));
  const double h = CP * TAMB;
  double lo = PAMB * pow(2 / (G + 1), G / (G - 1)), hi = PAMB;
  for (int i = 0; i < 100; i++) {
    const double p = 0.5 * (lo + hi), v = sqrt(2 * h * (1 - pow(p / PAMB, (G - 1) / G)));
    if (slower(s, p) - s.u > v) hi = p; else lo = p; /* the pipe would take more: lower */
  }
  const double p = 0.5 * (lo + hi);
  return fluxOf(entering(h, p, sqrt(2 * h * (1 - pow(p / PAMB, (G - 1) / G)))));
}
/* kg/(m² s) from stagnation conditions to a pressure, at most what is choked. */
static double throat(double p0, double t0, double p) {
  const double ratio = fmax(p / p0, pow(2 / (G + 1), G / (G - 1)));
  if (ratio >= 1) return 0;
  const double t = t0 * pow(ratio, (G - 1) / G);
  return ratio * p0 / (R * t) * sqrt(2 * CP * (t0 - t));
}
static Flux vesselEnd(State s, double bore, double area, double pv, double tv) {
  const double stop = stopPressure(s);
  if (area > bore) area = bore;
  if (area <= 0 || stop == pv) return (Flux){0, stop, 0};
  if (pv > stop) { /* into the pipe */
    const double h = CP * tv, most = sqrt(2 * (G - 1) / (G + 1) * h);
    double lo = stop, hi = pv;
    for (int i = 0; i < 100; i++) {
      const double p = 0.5 * (lo + hi), v = fmin(slower(s, p) - s.u, most);
      const double passes = p / (R * (h - 0.5 * v * v) / CP) * v * bore;
      if (passes > area * throat(pv, tv, p)) hi = p; else lo = p;
    }
    const double p = 0.5 * (lo + hi);
    return fluxOf(entering(h, p, slower(s, p) - s.u));
  }
  double lo = pv, hi = stop;
  for (int i = 0; i < 100; i++) {
    const double p = 0.5 * (lo + hi);
    const State w = {denser(s, p), s.u - slower(s, p), p};
    const double m2 = w.u * w.u * w.rho / (G * p), rise = 1 + (G - 1) / 2 * m2;
    const double t0 = p / (w.rho * R) * rise, p0 = p * pow(rise, G / (G - 1));
    /* Faster than sound at this pressure: it must be higher. */
    if (m2 > 1 || w.rho * w.u * bore > area * throat(p0, t0, pv)) lo = p; else hi = p;
  }
  const double p = 0.5 * (lo + hi);
  return fluxOf((State){denser(s, p), s.u - slower(s, p), p});
}
/* Net mass into a junction at pressure p; the fluxes of its pipes on the way. */
static double balance(int n, const State *s, const double *bore, double p, Flux *f) {
  double mass = 0, energy = 0, net = 0;
  for (int i = 0; i < n; i++)
    if (s[i].u - slower(s[i], p) > 0) {
      f[i] = fluxOf(onPlane(s[i], p));
      mass += bore[i] * f[i].mass;
      energy += bore[i] * f[i].energy;
    }
  net = mass;
  for (int i = 0; i < n; i++) {
    const double v = slower(s[i], p) - s[i].u;
    if (v < 0) continue;
    if (mass <= 0) { f[i] = (Flux){0, p, 0}; net -= v; continue; } /* nothing enters: too high a pressure */
    f[i] = fluxOf(entering(energy / mass, p, v));
    net += bore[i] * f[i].mass;
  }
  return net;
}
static void junction(int n, const State *s, const double *bore, Flux *f) {
  double lo = INFINITY, hi = 0;
  for (int i = 0; i < n; i++) {
    const double p = stopPressure(s[i]);
    lo = fmin(lo, p);
    hi = fmax(hi, p);
  }
  if (hi - lo <= 4e-15 * hi) {
    for (int i = 0; i < n; i++) f[i] = (Flux){0, stopPressure(s[i]), 0};
    return;
  }
  for (int i = 0; i < 100; i++) {
    const double p = 0.5 * (lo + hi);
    if (balance(n, s, bore, p, f) > 0) lo = p; else hi = p;
  }
  const double p = 0.5 * (lo + hi);
  balance(n, s, bore, p, f);
  for (int i = 0; i < n; i++)
    if (s[i].u - slower(s[i], p) > 0 && onPlane(s[i], p).p != p) soundFeeds++;
}

/* ---- reconstruction ---- */

static double weno(double a, double b, double c, double d, double e) { /* at the face between c and d */
  const double x = a - 2 * b + c, y = b - 2 * c + d, z = c - 2 * d + e;
  const double k = 13.0 / 12, t0 = a - 4 * b + 3 * c, t1 = b - d, t2 = 3 * c - 4 * d + e;
  const double scale = 1e-12 * (a * a + b * b + c * c + d * d + e * e) + 1e-40;
  const double s0 = k * x * x + 0.25 * t0 * t0 + scale, s1 = k * y * y + 0.25 * t1 * t1 + scale, s2 = k * z * z + 0.25 * t2 * t2 + scale;
  const double w0 = 0.1 / (s0 * s0), w1 = 0.6 / (s1 * s1), w2 = 0.3 / (s2 * s2);
  return (w0 * (2 * a - 7 * b + 11 * c) + w1 * (-b + 5 * c + 2 * d) + w2 * (2 * c + 5 * d - e)) / (6 * (w0 + w1 + w2));
}
static double least(double a, double b) { return a * b <= 0 ? 0 : fabs(a) < fabs(b) ? a : b; }

static void reconstruct(const Pipe *pipe) {
  const int n = pipe->n;
  for (int i = 0; i < n; i++) {
    const State *w = W + pipe->first + i;
    State *lo = lower + pipe->first + i, *hi = upper + pipe->first + i;
    *lo = *hi = *w;
    if (n < 3) continue;
    if (i < 2 || i > n - 3) {
      const State *m = i == 0 ? w + 1 : i == n - 1 ? w - 1 : w; /* the outermost take their neighbour's differences */
      const double a = 0.5 * least(m->rho - m[-1].rho, m[1].rho - m->rho), b = 0.5 * least(m->u - m[-1].u, m[1].u - m->u),
                   c = 0.5 * least(m->p - m[-1].p, m[1].p - m->p);
      *lo = (State){w->rho - a, w->u - b, w->p - c};
      *hi = (State){w->rho + a, w->u + b, w->p + c};
    } else {
      const double c = sound(*w), z = w->rho * c, c2 = c * c;
      double q[3][5];
      for (int k = -2; k <= 2; k++) { /* differences from the cell itself, so that what is even stays exactly so */
        const double dr = w[k].rho - w->rho, du = w[k].u - w->u, dp = w[k].p - w->p;
        q[0][k + 2] = 0.5 * (dp - z * du); q[1][k + 2] = dr - dp / c2; q[2][k + 2] = 0.5 * (dp + z * du);
      }
      double up[3], down[3];
      for (int f = 0; f < 3; f++) {
        const double *v = q[f];
        up[f] = weno(v[0], v[1], v[2], v[3], v[4]);
        down[f] = weno(v[4], v[3], v[2], v[1], v[0]);
      }
      *hi = (State){w->rho + up[1] + (up[0] + up[2]) / c2, w->u + (up[2] - up[0]) / z, w->p + up[0] + up[2]};
      *lo = (State){w->rho + down[1] + (down[0] + down[2]) / c2, w->u + (down[2] - down[0]) / z, w->p + down[0] + down[2]};
    }
    if (fmin(lo->rho, hi->rho) < 0.2 * w->rho || fmin(lo->p, hi->p) < 0.2 * w->p) *lo = *hi = *w;
  }
}

/* ---- one stage: DU from U ---- */

static double fanning(const Pipe *pipe, State w, double diameter) {
  if (pipe->roughness < 0) return pipe->friction;
  const double t = w.p / (w.rho * R), mu = 1.716e-5 * pow(t / 273.15, 1.5) * (273.15 + 110.4) / (t + 110.4);
  const double re = w.rho * fabs(w.u) * diameter / mu;
  if (re < 2300) return 16 / fmax(re, 1e-9);
  const double root = -1.8 * log10(pow(pipe->roughness / diameter / 3.7, 1.11) + 6.9 / re);
  return 0.25 / (root * root);
}
static Flux *endFlux; /* two of each pipe, positive out of it */

static int stage(double time) {
  for (int i = 0; i < cells; i++) {
    const double *u = U + 3 * i, v = u[1] / u[0];
    W[i] = (State){u[0], v, (G - 1) * (u[2] - 0.5 * u[1] * v)};
    if (!(W[i].rho > 0 && W[i].p > 0)) { fprintf(stderr, "cell %d fails at %g s\n", i, time); return 0; }
  }
  for (int k = 0; k < pipeCount; k++) reconstruct(pipes + k);
  leftMass = leftEnergy = fromWalls = 0;
  for (int e = 0; e < endCount; e++) {
    End *end = ends + e;
    State s[16]; double bore[16]; Flux f[16];
    for (int i = 0; i < end->n; i++) {
      const Pipe *p = pipes + end->side[i].pipe;
      s[i] = end->side[i].finish ? upper[p->first + p->n - 1] : lower[p->first];
      if (!end->side[i].finish) s[i].u = -s[i].u;
      bore[i] = p->face[end->side[i].finish ? p->n : 0];
    }
    if (end->kind == 'c') f[0] = (Flux){0, stopPressure(s[0]), 0};
    else if (end->kind == 'o') f[0] = openEnd(s[0]);
    else if (end->kind == 't') f[0] = fluxOf(s[0]);
    else if (end->kind == 'j') junction(end->n, s, bore, f);
    else {
      double *store = U + 3 * cells + 2 * end->store, *rate = DU + 3 * cells + 2 * end->store;
      const double t = store[1] / store[0] * (G - 1) / R;
      f[0] = vesselEnd(s[0], bore[0], end->cd * onTable(end->area, end->steps, time), store[0] * R * t / end->volume, t);
      rate[0] = bore[0] * f[0].mass;
      rate[1] = bore[0] * f[0].energy;
    }
    for (int i = 0; i < end->n; i++) endFlux[2 * end->side[i].pipe + end->side[i].finish] = f[i];
    if (end->kind == 'o' || end->kind == 't') { leftMass += bore[0] * f[0].mass; leftEnergy += bore[0] * f[0].energy; }
  }
  for (int k = 0; k < pipeCount; k++) {
    const Pipe *p = pipes + k;
    Flux before = endFlux[2 * k];
    before.mass = -before.mass; before.energy = -before.energy;
    for (int i = 0; i < p->n; i++) {
      const int c = p->first + i;
      const Flux after = i == p->n - 1 ? endFlux[2 * k + 1] : riemann(upper[c], lower[c + 1]);
      const double a = p->face[i], b = p->face[i + 1], v = p->volume[i];
      double *d = DU + 3 * c;
      d[0] = (a * before.mass - b * after.mass) / v;
      d[1] = (a * (before.momentum - W[c].p) - b * (after.momentum - W[c].p)) / v;
      d[2] = (a * before.energy - b * after.energy) / v;
      if (p->friction > 0 || p->roughness >= 0) {
        const double f = fanning(p, W[c], p->diameter[i]), flow = W[c].rho * fabs(W[c].u);
        d[1] -= 2 * f * flow * W[c].u / p->diameter[i];
        if (p->wall >= 0) {
          const double q = 2 * f * flow * CP * pow(0.71, -2.0 / 3) * (p->wall - W[c].p / (W[c].rho * R)) / p->diameter[i];
          d[2] += q;
          fromWalls += q * v;
        }
      }
      before = after;
    }
  }
  return 1;
}

/* ---- setting up, running, writing ---- */

static double volumeTo(const Pipe *p, double x) { /* from the start, exact for cones */
  double sum = 0;
  for (int i = 0; i + 1 < p->knees; i++) {
    const double a = p->knee[2 * i], b = fmin(p->knee[2 * i + 2], x);
    if (b <= a) break;
    const double d = onTable(p->knee, p->knees, a), e = onTable(p->knee, p->knees, b);
    sum += M_PI / 12 * (b - a) * (d * d + d * e + e * e);
  }
  return sum;
}
static void readPipe(Pipe *p, int multiplier, double **initial, int *pieces) {
  p->length = number();
  p->n = (int)number() * multiplier;
  p->dx = p->length / p->n;
  p->knees = (int)number();
  p->knee = room(2 * p->knees, sizeof(double));
  for (int i = 0; i < 2 * p->knees; i++) p->knee[i] = number();
  p->friction = number(); p->roughness = number(); p->wall = number();
  *pieces = (int)number();
  *initial = room(5 * *pieces, sizeof(double));
  for (int i = 0; i < 5 * *pieces; i++) (*initial)[i] = number();
  p->face = room(p->n + 1, sizeof(double));
  p->volume = room(p->n, sizeof(double));
  p->diameter = room(p->n, sizeof(double));
  for (int i = 0; i <= p->n; i++) { const double d = onTable(p->knee, p->knees, i * p->dx); p->face[i] = M_PI / 4 * d * d; }
  for (int i = 0; i < p->n; i++) {
    p->volume[i] = volumeTo(p, (i + 1) * p->dx) - volumeTo(p, i * p->dx);
    p->diameter[i] = onTable(p->knee, p->knees, (i + 0.5) * p->dx);
  }
}
static void fill(const Pipe *p, const double *initial, int pieces) {
  for (int i = 0; i < p->n; i++) {
    double *u = U + 3 * (p->first + i), from = i * p->dx, to = from + p->dx, had = 0;
    for (int k = 0; k < pieces; k++) {
      const double *s = initial + 5 * k, share = (fmin(to, s[1]) - fmax(from, s[0])) / p->dx;
      if (share <= 1e-9) continue;
      const double rho = s[2] / (R * s[3]);
      u[0] += share * rho;
      u[1] += share * rho * s[4];
      u[2] += share * (s[2] / (G - 1) + 0.5 * rho * s[4] * s[4]);
      had += share;
    }
    for (int j = 0; j < 3; j++) u[j] /= had;
  }
}
static void totals(double *mass, double *energy) {
  *mass = *energy = 0;
  for (int k = 0; k < pipeCount; k++)
    for (int i = 0; i < pipes[k].n; i++) {
      *mass += pipes[k].volume[i] * U[3 * (pipes[k].first + i)];
      *energy += pipes[k].volume[i] * U[3 * (pipes[k].first + i) + 2];
    }
  for (int i = 0; i < stores; i++) { *mass += U[3 * cells + 2 * i]; *energy += U[3 * cells + 2 * i + 1]; }
}
static void row(double time, int probes, const double *probe) {
  printf("%.9g", time);
  for (int i = 0; i < probes; i++) {
    const Pipe *p = pipes + (int)probe[2 * i];
    const double x = probe[2 * i + 1] / p->dx - 0.5;
    int k = (int)floor(x);
    k = k < 0 ? 0 : k > p->n - 2 ? p->n - 2 : k;
    double v[2][4];
    for (int j = 0; j < 2; j++) {
      const double *u = U + 3 * (p->first + k + j), pr = (G - 1) * (u[2] - 0.5 * u[1] * u[1] / u[0]);
      v[j][0] = pr; v[j][1] = u[1] / u[0]; v[j][2] = pr / (u[0] * R); v[j][3] = u[0];
    }
    for (int j = 0; j < 4; j++) printf(",%.9g", v[0][j] + (x - k) * (v[1][j] - v[0][j]));
  }
  printf("\n");
}

int main(int argc, char **argv) {
  const int multiplier = argc > 1 ? atoi(argv[1]) : 1;
  const double courant = argc > 2 ? atof(argv[2]) : 0.5;
  G = number(); R = number(); PAMB = number(); TAMB = number();
  CP = G * R / (G - 1); E1 = (G - 1) / (2 * G); E2 = 2 / (G - 1); E3 = 2 * G / (G - 1); G6 = (G - 1) / (G + 1);
  pipeCount = (int)number();
  pipes = room(pipeCount, sizeof(Pipe));
  double **initial = room(pipeCount, sizeof(double *));
  int *pieces = room(pipeCount, sizeof(int));
  for (int k = 0; k < pipeCount; k++) { readPipe(pipes + k, multiplier, initial + k, pieces + k); pipes[k].first = cells; cells += pipes[k].n; }
  endCount = (int)number();
  ends = room(endCount, sizeof(End));
  double *vessel = room(2 * endCount, sizeof(double));
  for (int e = 0; e < endCount; e++) {
    End *end = ends + e;
    if (scanf(" %c", &end->kind) != 1) return 1;
    end->n = (int)number();
    for (int i = 0; i < end->n; i++) { end->side[i].pipe = (int)number(); end->side[i].finish = (int)number(); }
    if (end->kind != 'v') continue;
    end->volume = number();
    const double p = number(), t = number();
    vessel[2 * stores] = p * end->volume / (R * t);
    vessel[2 * stores + 1] = p * end->volume / (G - 1);
    end->store = stores++;
    end->cd = number();
    end->steps = (int)number();
    end->area = room(2 * end->steps, sizeof(double));
    for (int i = 0; i < 2 * end->steps; i++) end->area[i] = number();
  }
  const double duration = number(), sample = number();
  const int probes = (int)number();
  double *probe = room(2 * probes, sizeof(double));
  for (int i = 0; i < 2 * probes; i++) probe[i] = number();

  const int all = 3 * cells + 2 * stores;
  U = room(all, sizeof(double)); U0 = room(all, sizeof(double)); DU = room(all, sizeof(double));
  W = room(cells, sizeof(State)); lower = room(cells, sizeof(State)); upper = room(cells, sizeof(State));
  endFlux = room(2 * pipeCount, sizeof(Flux));
  for (int k = 0; k < pipeCount; k++) fill(pipes + k, initial[k], pieces[k]);
  memcpy(U + 3 * cells, vessel, 2 * stores * sizeof(double));

  double mass0, energy0, mass, energy, outMass = 0, outEnergy = 0, walls = 0, time = 0;
  totals(&mass0, &energy0);
  row(0, probes, probe);
  long steps = 0, rows = 1;
  while (time < duration * (1 - 1e-12)) {
    double dt = INFINITY;
    for (int k = 0; k < pipeCount; k++)
      for (int i = pipes[k].first; i < pipes[k].first + pipes[k].n; i++) {
        const double *u = U + 3 * i, v = u[1] / u[0], p = (G - 1) * (u[2] - 0.5 * u[1] * v);
        dt = fmin(dt, courant * pipes[k].dx / (fabs(v) + sqrt(G * p / u[0])));
      }
    const double next = sample > 0 ? fmin(duration, rows * sample) : duration;
    const int lands = time + dt * (1 + 1e-9) >= next;
    if (lands) dt = next - time;
    memcpy(U0, U, all * sizeof(double));
    /* Shu and Osher: each stage's result is a share of the start and a share of an Euler step. */
    static const double keep[3] = {0, 0.75, 1.0 / 3}, at[3] = {0, 1, 0.5}, weight[3] = {1.0 / 6, 1.0 / 6, 2.0 / 3};
    for (int s = 0; s < 3; s++) {
      if (!stage(time + at[s] * dt)) return 1;
      for (int i = 0; i < all; i++) U[i] = keep[s] * U0[i] + (1 - keep[s]) * (U[i] + dt * DU[i]);
      outMass += weight[s] * dt * leftMass;
      outEnergy += weight[s] * dt * leftEnergy;
      walls += weight[s] * dt * fromWalls;
    }
    time = lands ? next : time + dt;
    steps++;
    if (lands && sample > 0 && rows * sample <= duration * (1 + 1e-12)) { row(time, probes, probe); rows++; }
  }
  totals(&mass, &energy);
  fprintf(stderr, "%d cells, %ld steps; mass %.9g kg drift %.2e, energy %.9g J drift %.2e; held at sonic speed: entries %ld, feeds %ld\n", cells, steps,
          mass, (mass - mass0 + outMass) / mass0, energy, (energy - energy0 + outEnergy - walls) / energy0, soundEntries, soundFeeds);
  if (argc > 3) /* also every cell at the last instant, for checks of this solver itself */
    for (int k = 0; k < pipeCount; k++)
      for (int i = 0; i < pipes[k].n; i++) {
        const double *u = U + 3 * (pipes[k].first + i);
        fprintf(stderr, "%d %.9g %.12g %.12g %.12g\n", k, (i + 0.5) * pipes[k].dx, u[0], u[1] / u[0], (G - 1) * (u[2] - 0.5 * u[1] * u[1] / u[0]));
      }
  return 0;
}
