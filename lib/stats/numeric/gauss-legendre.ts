/** Nodes and weights of a quadrature rule on −1 … 1. */
export interface QuadratureRule {
  nodes: number[];
  weights: number[];
}

const made = new Map<number, QuadratureRule>();

/**
 * Gauss–Legendre rule of `n` points: exact for polynomials of degree 2n − 1.
 *
 * Nodes are the zeros of the Legendre polynomial Pₙ by Newton's method from the cosine estimate;
 * weights 2 / ((1 − x²) Pₙ′(x)²). Source: Abramowitz & Stegun 25.4.29 and 22.16.6.
 */
export function gaussLegendre(n: number): QuadratureRule {
  const known = made.get(n);
  if (known) return known;
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < n; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 6; step++) {
      let previous = 1;
      let value = x;
      for (let k = 2; k <= n; k++) {
        [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k];
      }
      slope = (n * (x * value - previous)) / (x * x - 1);
      x -= value / slope;
    }
    nodes.push(x);
    weights.push(2 / ((1 - x * x) * slope * slope));
  }
  const rule = { nodes, weights };
  made.set(n, rule);
  return rule;
}

/** ∫ f over from … to by one Gauss–Legendre panel of `points` nodes. */
export function integratePanel(f: (x: number) => number, from: number, to: number, points: number): number {
  const { nodes, weights } = gaussLegendre(points);
  const half = (to - from) / 2;
  const middle = from + half;
  let sum = 0;
  for (let i = 0; i < points; i++) sum += (weights[i] ?? 0) * f(middle + half * (nodes[i] ?? 0));
  return sum * half;
}

/** ∫ f over the panels between neighbouring edges, which must rise. */
export function integratePanels(f: (x: number) => number, edges: readonly number[], points = 16): number {
  let sum = 0;
  let from = edges[0] ?? 0;
  for (const to of edges.slice(1)) {
    sum += integratePanel(f, from, to, points);
    from = to;
  }
  return sum;
}
