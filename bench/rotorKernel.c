/* The kernel of src/rotor/elements.ts line by line, for a fair race: cc -O3, no -ffast-math. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define MAX 64
static int count, angles, rows, blades;
static double dragScale, omega, V, density;
static double *values;
static double r[MAX], dr[MAX], c_[MAX], theta[MAX], sigma4[MAX], share_[MAX], dragMore[MAX], compress[MAX],
    alpha0[MAX], delayLift[MAX], delayDrag[MAX], mach[MAX], tipGap[MAX], rootGap[MAX];
static int row_[MAX];
static double phi_[MAX], cl_[MAX], cd_[MAX], F_[MAX], W_[MAX];
static double last[4];

static double waveDrag(double m, double cl) {
  double over = m - (0.87 - 0.07 - 0.1 * fabs(cl) - 0.1077);
  if (over <= 0) return 0;
  double d = 20 * over * over * over * over;
  return d < 0.15 ? d : 0.15;
}

static double placeOf(int i, double alpha) {
  double near = 1 - alpha * alpha * 1.62;
  if (near < 0) near = 0;
  double steep = alpha + compress[i] * (alpha - alpha0[i]) * near * near;
  double place = ((steep + M_PI) * (angles - 1)) / (2 * M_PI);
  if (place < 0) place = 0;
  return place < angles - 1.001 ? place : angles - 1.001;
}

static double liftOf(int i, double alpha) {
  double place = placeOf(i, alpha);
  int k = (int)place;
  double t = place - k, share = share_[i], delay = delayLift[i];
  int low = (row_[i] * angles + k) * 4, high = low + angles * 4;
  return (1 - share) * ((1 - t) * (values[low] + delay * values[low + 2]) +
                        t * (values[low + 4] + delay * values[low + 6])) +
         share * ((1 - t) * (values[high] + delay * values[high + 2]) +
                  t * (values[high + 4] + delay * values[high + 6]));
}

static double dragOf(int i, double alpha, double cl) {
  double place = placeOf(i, alpha);
  int k = (int)place;
  double t = place - k, share = share_[i], delay = delayDrag[i];
  int low = (row_[i] * angles + k) * 4, high = low + angles * 4;
  double drag = (1 - share) * ((1 - t) * (values[low + 1] - delay * values[low + 3]) +
                               t * (values[low + 5] - delay * values[low + 7])) +
                share * ((1 - t) * (values[high + 1] - delay * values[high + 3]) +
                         t * (values[high + 5] - delay * values[high + 7]));
  return drag * dragScale + dragMore[i] + waveDrag(mach[i], cl);
}

static double sine(double x) {
  double q = x * x;
  return x * (1 + q * (-0.1666666664 +
                       q * (0.0083333315 + q * (-0.000198409 + q * (0.0000027526 + q * -0.0000000239)))));
}

static double cosine(double x) {
  double q = x * x;
  return 1 + q * (-0.4999999963 +
                  q * (0.0416666418 + q * (-0.0013888397 + q * (0.0000247609 + q * -0.0000002605))));
}

static double decay(double x) {
  double y = x * 0.03125;
  double a =
      1 + y * (-0.9999999995 +
               y * (0.4999999206 +
                    y * (-0.1666653019 +
                         y * (0.0416573475 + y * (-0.0083013598 + y * (0.001329882 + y * -0.0001413161))))));
  double b = a * a, c = b * b, d = c * c, e = d * d;
  return e * e;
}

static double arcCosine(double x) {
  return sqrt(1 - x) *
         (1.570796305 +
          x * (-0.2145988016 +
               x * (0.0889789874 +
                    x * (-0.0501743046 +
                         x * (0.030891881 + x * (-0.0170881256 + x * (0.0066700901 + x * -0.0012624911)))))));
}

static double lossFactor(int i, double absSin) {
  double tip = tipGap[i] / absSin;
  double F = tip > 14 ? 1 : (2 / M_PI) * arcCosine(decay(tip));
  double root = rootGap[i] / absSin;
  if (root < 14) F *= (2 / M_PI) * arcCosine(decay(root));
  return F;
}

static double residual(int i, double phi, double Wr) {
  double s = sine(phi), c = cosine(phi), absSin = fabs(s) > 1e-9 ? fabs(s) : 1e-9;
  double cl = liftOf(i, theta[i] - phi);
  double F = lossFactor(i, absSin);
  last[0] = cl;
  last[1] = F;
  last[2] = s;
  last[3] = c;
  return absSin * (Wr * s - V * c) - (sigma4[i] / F) * cl * (Wr * c + V * s);
}

static void keep(int i, double phi, double Wr) {
  double swirl = (sigma4[i] / last[1]) * last[0] * (phi > 0 ? 1 : phi < 0 ? -1 : 0);
  phi_[i] = phi;
  cl_[i] = last[0];
  cd_[i] = dragOf(i, theta[i] - phi, last[0]);
  F_[i] = last[1];
  W_[i] = Wr / (last[3] + swirl);
}

static void solveStation(int i, double Wr) {
  double a = atan2(V, Wr), b = theta[i] - alpha0[i];
  double fb = residual(i, b, Wr);
  if (fb == 0) return keep(i, b, Wr);
  double fa = residual(i, a, Wr);
  if (fa == 0) return keep(i, a, Wr);
  if ((fa > 0) == (fb > 0)) {
    b += b > a ? 0.03 : -0.03;
    fb = residual(i, b, Wr);
  }
  for (int n = 1; n < 80; n++) {
    double x = n % 8 == 0 ? 0.5 * (a + b) : b - (fb * (b - a)) / (fb - fa);
    double f = residual(i, x, Wr);
    if (f == 0) return keep(i, x, Wr);
    if ((f > 0) != (fb > 0)) {
      a = b;
      fa = fb;
    } else {
      double damp = 1 - f / fb;
      fa *= damp > 0 ? damp : 0.5;
    }
    double step = fabs(x - b);
    b = x;
    fb = f;
    if (step < 1e-7 || fabs(b - a) < 1e-7) break;
  }
  keep(i, b, Wr);
}

static void solve(void) {
  double T = 0, Q = 0;
  for (int i = 0; i < count; i++) {
    solveStation(i, omega * r[i]);
    double s = last[2], c = last[3];
    double load = 0.5 * density * W_[i] * W_[i] * blades * c_[i];
    T += load * (cl_[i] * c - cd_[i] * s) * dr[i];
    Q += load * (cl_[i] * s + cd_[i] * c) * r[i] * dr[i];
  }
  last[0] = T;
  last[1] = Q;
}

static void read(double *to, int n) {
  for (int i = 0; i < n; i++)
    if (scanf("%lf", to + i) != 1) exit(1);
}

int main(void) {
  int solves;
  double head[8];
  read(head, 8);
  count = head[0]; angles = head[1]; rows = head[2]; blades = head[3];
  dragScale = head[4]; omega = head[5]; density = head[6]; solves = head[7];
  V = 0;
  double *columns[] = {r, dr, c_, theta, sigma4, share_, dragMore, compress, alpha0, delayLift, delayDrag, mach, tipGap, rootGap};
  for (int k = 0; k < 14; k++) read(columns[k], count);
  for (int i = 0; i < count; i++) { double x; read(&x, 1); row_[i] = x; }
  values = malloc(sizeof(double) * rows * angles * 4);
  read(values, rows * angles * 4);
  double best = 1e9, sum = 0;
  for (int lap = 0; lap < 150; lap++) {
    struct timespec from, to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    for (int k = 0; k < solves; k++) {
      theta[0] += 1e-12; /* keeps the compiler from solving once */
      solve();
      sum += last[0];
    }
    clock_gettime(CLOCK_MONOTONIC, &to);
    double seconds = (to.tv_sec - from.tv_sec) + 1e-9 * (to.tv_nsec - from.tv_nsec);
    if (seconds < best) best = seconds;
  }
  printf("%.17g %.17g %.17g %g\n", last[0], last[1], best / solves, sum);
  return 0;
}
