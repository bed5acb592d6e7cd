/*
 * The yardstick of the gas-flow solver: the plain second-order scheme as one writes it in C, double precision, for cc -O3 with no
 * other option. MUSCL-Hancock with van Leer's slopes in primitive variables, HLLC with wave speeds estimated from pressure (Toro
 * 2009, chapters 10 and 14), tapered pipes, closed and open ends, equal-pressure junctions and vessels joined by exact waves. No
 * friction, no heat, one perfect gas. SI units. Reads the flat rig that tests/pulse/fine/flatten.mjs makes.
 *
 * Use: muscl ROUNDS < FLAT. One line for each round, "steps cellUpdates seconds" of processor time, then the probes' pressures as
 * rows of time and pressures. Setting up, reading and writing are not timed.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef struct { double rho, u, p; } State;
typedef struct { double mass, momentum, energy; } Flux;
typedef struct { int n, first, knees; double length, dx, *knee; Flux start, finish; } Pipe;
typedef struct { char kind; int n, steps, pipe[16], finish[16]; double bore[16], volume, p0, t0, cd, *area, mass, energy, guess; } End;

static double G, R, CP, PAMB, TAMB, COURANT = 0.8, E1, G6, CRITICAL;
static Pipe *pipes; static End *ends; static int pipeCount, endCount, cells, most;
/* By cell: conserved, primitive, states at both faces, geometry. By face of one pipe: fluxes. */
static double *D, *M, *E, *rho, *u, *p, *dl, *ul, *pl, *dr, *ur, *pr, *ratio, *before, *after, *volume, *grows, *fm, *fu, *fe;

static double *column(size_t n) { double *c = calloc(n + 1, sizeof(double)); if (!c) exit(1); return c; }
static double number(void) { double x; if (scanf("%lf", &x) != 1) exit(1); return x; }
static double onTable(const double *t, int n, double x) {
  if (x <= t[0]) return t[1];
  for (int i = 1; i < n; i++)
    if (x < t[2 * i]) return t[2 * i - 1] + (t[2 * i + 1] - t[2 * i - 1]) * (x - t[2 * i - 2]) / (t[2 * i] - t[2 * i - 2]);
  return t[2 * n - 1];
}

/* ---- ends ---- */

static inline double slower(State s, double q) {
  if (q > s.p) return (q - s.p) * sqrt(2 / (s.rho * ((G + 1) * q + (G - 1) * s.p)));
  return 2 / (G - 1) * sqrt(G * s.p / s.rho) * (pow(q / s.p, E1) - 1);
}
static inline double denser(State s, double q) {
  const double r = q / s.p;
  return r > 1 ? s.rho * (r + G6) / (G6 * r + 1) : s.rho * pow(r, 1 / G);
}
static double stopPressure(State s) {
  const double m = s.u / sqrt(G * s.p / s.rho), k = (G + 1) / 4 * m;
  return s.p * (m > 0 ? 1 + G * m * (k + sqrt(1 + k * k)) : pow(fmax(1 + (G - 1) / 2 * m, 1e-3), 1 / E1));
}
static inline Flux fluxOf(State s) {
  const double m = s.rho * s.u;
  return (Flux){m, m * s.u + s.p, s.u * (G / (G - 1) * s.p + 0.5 * m * s.u)};
}
static State onPlane(State s, double q) {
  const double a = sqrt(G * s.p / s.rho), v = s.u - slower(s, q);
  if (s.u > a && q <= s.p) return s;
  if (q <= s.p && v > a * pow(q / s.p, E1)) {
    const double c = 2 / (G + 1) * (a + (G - 1) / 2 * s.u);
    return (State){s.rho * pow(c / a, 2 / (G - 1)), c, s.p * pow(c / a, 1 / E1)};
  }
  return (State){denser(s, q), v, q};
}
static inline State entering(double h, double q, double v) {
  v = fmin(v, sqrt(2 * (G - 1) / (G + 1) * h));
  return (State){q * CP / (R * (h - 0.5 * v * v)), -v, q};
}
/* Where f rises through 0 between lo and hi: by the secant, kept between. */
typedef double (*Rising)(const void *of, double q);
static inline double root(Rising f, const void *of, double lo, double hi, double q) {
  if (!(q > lo && q < hi)) q = 0.5 * (lo + hi);
  double y = f(of, q), last = q, lastY = y, step = 1e-5 * q;
  for (int i = 0; i < 50; i++) {
    if (y > 0) hi = q; else lo = q;
    double next = i == 0 ? q + (y > 0 ? -step : step) : q - y * (q - last) / (y - lastY);
    if (!(next > lo && next < hi)) next = 0.5 * (lo + hi);
    last = q; lastY = y;
    if (fabs(next - q) < 1e-9 * q) return next;
    q = next;
    y = f(of, q);
  }
  return q;
}
static double inflow(double q) { return sqrt(2 * CP * TAMB * (1 - pow(q / PAMB, (G - 1) / G))); }
static double openMisses(const void *of, double q) { const State *s = of; return slower(*s, q) - s->u - inflow(q); }
static void openEnd(End *end, State s, Flux *f) {
  if (s.u >= slower(s, PAMB)) { *f = fluxOf(onPlane(s, PAMB)); return; }
  const double q = end->guess = root(openMisses, &s, CRITICAL * PAMB, PAMB, end->guess);
  *f = fluxOf(entering(CP * TAMB, q, inflow(q)));
}
typedef struct { State s; double bore, area, pv, tv; } Orifice;
static double throat(double p0, double t0, double q) {
  const double r = fmax(q / p0, CRITICAL), t = pow(r, (G - 1) / G);
  return t < 1 ? r * p0 / (R * t * t0) * sqrt(2 * CP * t0 * (1 - t)) : 0;
}
static double entryMisses(const void *of, double q) {
  const Orifice *o = of;
  const State in = entering(CP * o->tv, q, slower(o->s, q) - o->s.u);
  return -in.rho * in.u * o->bore - o->area * throat(o->pv, o->tv, q);
}
static double exitMisses(const void *of, double q) {
  const Orifice *o = of;
  const double d = denser(o->s, q), v = o->s.u - slower(o->s, q), m2 = v * v * d / (G * q), rise = 1 + (G - 1) / 2 * m2;
  if (m2 > 1) return -1;
  return o->area * throat(q * pow(rise, 0.5 / E1), q / (d * R) * rise, o->pv) - d * v * o->bore;
}
static void vesselEnd(End *end, State s, double time, Flux *f) {
  const double tv = end->energy / end->mass * (G - 1) / R, pv = end->energy * (G - 1) / end->volume, stop = stopPressure(s);
  Orifice o = {s, end->bore[0], fmin(end->bore[0], end->cd * onTable(end->area, end->steps, time)), pv, tv};
  if (o.area <= 0) *f = (Flux){0, stop, 0};
  else if (pv > stop) {
    const double q = end->guess = root(entryMisses, &o, stop, pv, end->guess);
    *f = fluxOf(entering(CP * tv, q, slower(s, q) - s.u));
  } else {
    const double q = end->guess = root(exitMisses, &o, pv, stop, end->guess);
    *f = fluxOf((State){denser(s, q), s.u - slower(s, q), q});
  }
}
typedef struct { const End *end; const State *s; Flux *f; } Meeting;
static double leaves(const void *of, double q) { /* more than enters; the fluxes on the way */
  const Meeting *m = of;
  double mass = 0, energy = 0, v[16];
  for (int i = 0; i < m->end->n; i++) {
    v[i] = m->s[i].u - slower(m->s[i], q);
    if (v[i] <= 0) continue;
    m->f[i] = fluxOf(onPlane(m->s[i], q));
    mass += m->end->bore[i] * m->f[i].mass;
    energy += m->end->bore[i] * m->f[i].energy;
  }
  double net = -mass;
  for (int i = 0; i < m->end->n; i++) {
    if (v[i] > 0) continue;
    if (mass <= 0) { m->f[i] = (Flux){0, q, 0}; net -= v[i]; continue; }
    m->f[i] = fluxOf(entering(energy / mass, q, -v[i]));
    net -= m->end->bore[i] * m->f[i].mass;
  }
  return net;
}
static void junction(End *end, const State *s, Flux *f) {
  const Meeting m = {end, s, f};
  double lo = INFINITY, hi = 0;
  for (int i = 0; i < end->n; i++) { const double q = stopPressure(s[i]); lo = fmin(lo, q); hi = fmax(hi, q); }
  if (hi - lo < 1e-14 * hi) { for (int i = 0; i < end->n; i++) f[i] = (Flux){0, lo, 0}; return; }
  leaves(&m, end->guess = root(leaves, &m, lo, hi, end->guess));
}
static void meet(double time, double dt) {
  for (int e = 0; e < endCount; e++) {
    End *end = ends + e;
    State s[16]; Flux f[16];
    for (int i = 0; i < end->n; i++) {
      const Pipe *pipe = pipes + end->pipe[i];
      const int c = end->finish[i] ? pipe->first + pipe->n - 1 : pipe->first;
      s[i] = end->finish[i] ? (State){dr[c], ur[c], pr[c]} : (State){dl[c], -ul[c], pl[c]};
    }
    if (end->kind == 'j') junction(end, s, f);
    else if (end->kind == 'o') openEnd(end, s[0], f);
    else if (end->kind == 'v') {
      vesselEnd(end, s[0], time, f);
      end->mass += dt * end->bore[0] * f[0].mass;
      end->energy += dt * end->bore[0] * f[0].energy;
    } else f[0] = (Flux){0, stopPressure(s[0]), 0};
    for (int i = 0; i < end->n; i++)
      if (end->finish[i]) pipes[end->pipe[i]].finish = f[i];
      else pipes[end->pipe[i]].start = (Flux){-f[i].mass, f[i].momentum, -f[i].energy};
  }
}

/* ---- cells ---- */

static double decode(void) { /* and the longest step */
  double rate = 0;
  for (int k = 0; k < pipeCount; k++) {
    double fast = 0;
    for (int i = pipes[k].first, to = i + pipes[k].n; i < to; i++) {
      const double v = M[i] / D[i], q = (G - 1) * (E[i] - 0.5 * M[i] * v);
      rho[i] = D[i]; u[i] = v; p[i] = q;
      const double w = fabs(v) + sqrt(G * q / D[i]);
      fast = w > fast ? w : fast;
    }
    rate = fmax(rate, fast / pipes[k].dx);
  }
  return 1 / rate;
}
static inline double leer(double a, double b) {
  const double ab = a * b;
  return ab > 0 ? 2 * ab / (a + b) : 0;
}
/* Both face states of a cell, half a step on. */
static inline void trace(int i, double a, double b, double c, double half, double gx) {
  const double v = u[i], d = rho[i], q = p[i], swell = b + v * gx;
  const double dt = d - half * (v * a + d * swell), vt = v - half * (v * b + c / d), qt = q - half * (v * c + G * q * swell);
  dl[i] = dt - 0.5 * a; dr[i] = dt + 0.5 * a;
  ul[i] = vt - 0.5 * b; ur[i] = vt + 0.5 * b;
  pl[i] = qt - 0.5 * c; pr[i] = qt + 0.5 * c;
}
static void halfStep(const Pipe *pipe, double half) {
  const int from = pipe->first, last = from + pipe->n - 1;
  for (int i = from + 1; i < last; i++)
    trace(i, leer(rho[i] - rho[i - 1], rho[i + 1] - rho[i]), leer(u[i] - u[i - 1], u[i + 1] - u[i]), leer(p[i] - p[i - 1], p[i + 1] - p[i]),
          half, grows[i]);
  /* The outermost cells take their neighbours' slopes. */
  const int at[2] = {from, last}, in[2] = {from + 1, last - 1};
  for (int k = 0; k < 2; k++) {
    const int i = in[k];
    trace(at[k], leer(rho[i] - rho[i - 1], rho[i + 1] - rho[i]), leer(u[i] - u[i - 1], u[i + 1] - u[i]), leer(p[i] - p[i - 1], p[i + 1] - p[i]),
          half, grows[at[k]]);
  }
}
static void between(const Pipe *pipe) { /* HLLC at the faces between cells */
  const int from = pipe->first, n = pipe->n;
  for (int j = 1; j < n; j++) {
    const int l = from + j - 1, r = l + 1;
    const double d1 = dr[l], v1 = ur[l], q1 = pr[l], d2 = dl[r], v2 = ul[r], q2 = pl[r];
    const double a1 = sqrt(G * q1 / d1), a2 = sqrt(G * q2 / d2);
    const double q = fmax(0, 0.5 * (q1 + q2) - 0.125 * (v2 - v1) * (d1 + d2) * (a1 + a2)), k = (G + 1) / (2 * G);
    const double s1 = v1 - a1 * (q > q1 ? sqrt(1 + k * (q / q1 - 1)) : 1), s2 = v2 + a2 * (q > q2 ? sqrt(1 + k * (q / q2 - 1)) : 1);
    const double m1 = d1 * (s1 - v1), m2 = d2 * (s2 - v2), s = (q2 - q1 + v1 * m1 - v2 * m2) / (m1 - m2);
    const int left = s >= 0;
    const double d = left ? d1 : d2, v = left ? v1 : v2, pp = left ? q1 : q2, w = left ? s1 : s2, m = left ? m1 : m2;
    const double e = pp / (G - 1) + 0.5 * d * v * v;
    double f0 = d * v, f1 = d * v * v + pp, f2 = v * (e + pp);
    if (left ? s1 < 0 : s2 > 0) {
      const double ds = m / (w - s);
      f0 += w * (ds - d);
      f1 += w * (ds * s - d * v);
      f2 += w * (ds * (e / d + (s - v) * (s + pp / m)) - e);
    }
    fm[j] = f0; fu[j] = f1; fe[j] = f2;
  }
  fm[0] = pipe->start.mass; fu[0] = pipe->start.momentum; fe[0] = pipe->start.energy;
  fm[n] = pipe->finish.mass; fu[n] = pipe->finish.momentum; fe[n] = pipe->finish.energy;
}
static void advance(const Pipe *pipe, double dt) {
  for (int j = 0, i = pipe->first; j < pipe->n; j++, i++) {
    const double a = dt * before[i], b = dt * after[i], q = 0.5 * (pl[i] + pr[i]);
    D[i] += a * fm[j] - b * fm[j + 1];
    M[i] += a * (fu[j] - q) - b * (fu[j + 1] - q);
    E[i] += a * fe[j] - b * fe[j + 1];
  }
}

/* ---- setting up and running ---- */

static double volumeTo(const Pipe *pipe, double x) {
  double sum = 0;
  for (int i = 0; i + 1 < pipe->knees; i++) {
    const double a = pipe->knee[2 * i], b = fmin(pipe->knee[2 * i + 2], x);
    if (b <= a) break;
    const double d = onTable(pipe->knee, pipe->knees, a), e = onTable(pipe->knee, pipe->knees, b);
    sum += M_PI / 12 * (b - a) * (d * d + d * e + e * e);
  }
  return sum;
}

int main(int argc, char **argv) {
  const int rounds = argc > 1 ? atoi(argv[1]) : 1;
  G = number(); R = number(); PAMB = number(); TAMB = number();
  CP = G * R / (G - 1); E1 = (G - 1) / (2 * G); G6 = (G - 1) / (G + 1); CRITICAL = pow(2 / (G + 1), G / (G - 1));
  pipeCount = (int)number();
  pipes = calloc(pipeCount, sizeof(Pipe));
  double *initial = column(5 * 1000);
  int *pieces = calloc(pipeCount, sizeof(int)), read = 0;
  for (int k = 0; k < pipeCount; k++) {
    Pipe *pipe = pipes + k;
    pipe->length = number(); pipe->n = (int)number(); pipe->dx = pipe->length / pipe->n; pipe->first = cells;
    cells += pipe->n;
    if (pipe->n > most) most = pipe->n;
    pipe->knees = (int)number();
    pipe->knee = column(2 * pipe->knees);
    for (int i = 0; i < 2 * pipe->knees; i++) pipe->knee[i] = number();
    if (number() > 0 || number() > 0 || number() > 0) { fprintf(stderr, "no friction and no heat here\n"); return 1; }
    pieces[k] = (int)number();
    for (int i = 0; i < 5 * pieces[k]; i++) initial[read++] = number();
  }
  double **columns[] = {&D, &M, &E, &rho, &u, &p, &dl, &ul, &pl, &dr, &ur, &pr, &ratio, &before, &after, &volume, &grows};
  for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) *columns[i] = column(cells);
  fm = column(most + 1); fu = column(most + 1); fe = column(most + 1);
  for (int k = 0; k < pipeCount; k++) {
    const Pipe *pipe = pipes + k;
    for (int i = 0; i < pipe->n; i++) {
      const int c = pipe->first + i;
      const double d = onTable(pipe->knee, pipe->knees, i * pipe->dx), e = onTable(pipe->knee, pipe->knees, (i + 1) * pipe->dx);
      volume[c] = volumeTo(pipe, (i + 1) * pipe->dx) - volumeTo(pipe, i * pipe->dx);
      before[c] = M_PI / 4 * d * d / volume[c];
      after[c] = M_PI / 4 * e * e / volume[c];
      grows[c] = (after[c] - before[c]) * pipe->dx; /* of the area, over one cell, to the mean area */
    }
  }
  endCount = (int)number();
  ends = calloc(endCount, sizeof(End));
  for (int e = 0; e < endCount; e++) {
    End *end = ends + e;
    if (scanf(" %c", &end->kind) != 1 || !strchr("cojv", end->kind)) return 1;
    end->n = (int)number();
    for (int i = 0; i < end->n; i++) {
      end->pipe[i] = (int)number(); end->finish[i] = (int)number();
      const Pipe *pipe = pipes + end->pipe[i];
      const double d = onTable(pipe->knee, pipe->knees, end->finish[i] ? pipe->length : 0);
      end->bore[i] = M_PI / 4 * d * d;
    }
    if (end->kind != 'v') continue;
    end->volume = number(); end->p0 = number(); end->t0 = number(); end->cd = number(); end->steps = (int)number();
    end->area = column(2 * end->steps);
    for (int i = 0; i < 2 * end->steps; i++) end->area[i] = number();
  }
  const double duration = number(), sample = number();
  const int probes = (int)number(), rows = sample > 0 ? (int)(duration / sample + 1.5) : 1;
  double *probe = column(2 * probes), *seen = column((size_t)rows * (probes + 1));
  for (int i = 0; i < 2 * probes; i++) probe[i] = number();

  for (int round = 0; round < rounds; round++) {
    for (int k = 0, at = 0; k < pipeCount; at += pieces[k++])
      for (int i = 0; i < pipes[k].n; i++) {
        const int c = pipes[k].first + i;
        const double x = (i + 0.5) * pipes[k].dx, *s = initial + 5 * at;
        while (x > s[1] && s < initial + 5 * (at + pieces[k] - 1)) s += 5;
        D[c] = s[2] / (R * s[3]); M[c] = D[c] * s[4]; E[c] = s[2] / (G - 1) + 0.5 * M[c] * s[4];
      }
    for (int e = 0; e < endCount; e++) {
      ends[e].mass = ends[e].p0 * ends[e].volume / (R * fmax(ends[e].t0, 1));
      ends[e].energy = ends[e].p0 * ends[e].volume / (G - 1);
      ends[e].guess = 0;
    }
    long steps = 0;
    int row = 0;
    double time = 0;
    const clock_t began = clock();
    for (;;) {
      double dt = COURANT * decode();
      if (row < rows && time >= row * sample * (1 - 1e-12)) {
        double *r = seen + (size_t)row++ * (probes + 1);
        r[0] = time;
        for (int i = 0; i < probes; i++) {
          const Pipe *pipe = pipes + (int)probe[2 * i];
          const double x = probe[2 * i + 1] / pipe->dx - 0.5;
          const int j = (int)fmin(fmax(floor(x), 0), pipe->n - 2), c = pipe->first + j;
          r[1 + i] = p[c] + (x - j) * (p[c + 1] - p[c]);
        }
      }
      if (time >= duration * (1 - 1e-12)) break;
      const double next = row < rows ? fmin(duration, row * sample) : duration;
      if (time + dt * (1 + 1e-9) > next) dt = next - time;
      for (int k = 0; k < pipeCount; k++) halfStep(pipes + k, 0.5 * dt / pipes[k].dx);
      meet(time + 0.5 * dt, dt);
      for (int k = 0; k < pipeCount; k++) { between(pipes + k); advance(pipes + k, dt); }
      time += dt;
      steps++;
    }
    const double seconds = (double)(clock() - began) / CLOCKS_PER_SEC;
    printf("%ld %ld %.6f\n", steps, steps * cells, seconds);
  }
  for (int i = 0; i < rows; i++)
    for (int k = 0; k <= probes; k++) printf("%.9g%s", seen[(size_t)i * (probes + 1) + k], k < probes ? " " : "\n");
  return 0;
}
