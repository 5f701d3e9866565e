/** A script in Python (numpy and scipy) that holds the rows and fits them again, the likelihood written out. */
import type { ScriptContent } from './rScript.ts';

export function writePythonScript({ rows, siteNumbers, settings, head }: ScriptContent): string {
  // A JSON string is a Python string too: the same quotes and escapes.
  return `${head.map((line) => `# ${line}`).join('\n')}
# Run: python3 this-file.py   (needs numpy and scipy)
import csv
import io

import numpy as np
from scipy.linalg import cholesky, solve_triangular

ROWS = list(csv.DictReader(io.StringIO(${JSON.stringify(rows)})))
SITE = list(csv.DictReader(io.StringIO(${JSON.stringify(siteNumbers)})))
RHO = ${settings.rho}
WEIGHTING = ${JSON.stringify(settings.weighting)}
${PYTHON_BODY}`;
}

const PYTHON_BODY = `

def sampling(study, cohort, v):
    """Sampling covariance: RHO sqrt(v_i v_j) inside a cohort of a study, v on the diagonal."""
    same = (study[:, None] == study) & (cohort[:, None] == cohort) & (cohort != "")
    covariance = np.where(same, RHO * np.sqrt(np.outer(v, v)), 0.0)
    np.fill_diagonal(covariance, v)
    return covariance


def at(theta, y, X, V, K):
    """Generalised least squares and the restricted log-likelihood at (tau2, omega2), with derivatives."""
    n, p = X.shape
    Phi = V + theta[0] * K + theta[1] * np.eye(n)
    root = cholesky(Phi, lower=True)
    half = solve_triangular(root, np.eye(n), lower=True)
    W = half.T @ half
    XWX = X.T @ W @ X
    M = np.linalg.inv(XWX)
    beta = M @ X.T @ W @ y
    P = W - W @ X @ M @ X.T @ W
    Py = P @ y
    value = -0.5 * ((n - p) * np.log(2 * np.pi) + 2 * np.log(np.diag(root)).sum() + np.linalg.slogdet(XWX)[1] + y @ Py)
    PK = P @ K
    KPy = K @ Py
    score = -0.5 * np.array([np.trace(PK) - Py @ KPy, np.trace(P) - Py @ Py])
    cross = (PK * P.T).sum()
    information = 0.5 * np.array([[(PK * PK.T).sum(), cross], [cross, (P * P).sum()]])
    mixed = KPy @ P @ Py
    curvature = np.array([[KPy @ P @ KPy, mixed], [mixed, Py @ P @ Py]])
    return dict(value=value, score=score, information=information, hessian=information - curvature, Phi=Phi, W=W, M=M, beta=beta)


def climb(theta, free, *data):
    here = at(theta, *data)
    for _ in range(200):
        moving = np.where(free & ((theta > 0) | (here["score"] > 0)))[0]
        if moving.size == 0:
            break
        H = -here["hessian"][np.ix_(moving, moving)]
        if np.linalg.eigvalsh(H).min() <= 0:
            H = here["information"][np.ix_(moving, moving)]
        step = np.zeros(2)
        step[moving] = np.linalg.solve(H, here["score"][moving])
        share = 1.0
        while True:
            to = np.maximum(theta + share * step, 0)
            there = at(to, *data)
            if there["value"] >= here["value"] - 1e-12 * abs(here["value"]) or share < 1e-12:
                break
            share /= 2
        arrived = np.abs(to - theta).max() <= 1e-12 * max(to.max(), 1e-300)
        theta, here = to, there
        if arrived:
            break
    return dict(here, theta=theta)


def fit_reml(study, y, X, V, K):
    """The likelihood can have two maxima and maxima at 0: several starts, the best wins."""
    free = np.array([True, len(set(study)) < len(y)])
    residuals = y - X @ np.linalg.lstsq(X, y, rcond=None)[0]
    shares = np.array([0, 0.001, 0.015, 0.2, 2]) * (residuals @ residuals) / max(1, X.shape[0] - X.shape[1])
    starts = [np.array([a, b]) for a in shares for b in (shares if free[1] else [0.0])]
    starts.sort(key=lambda start: -at(start, y, X, V, K)["value"])
    return max((climb(start, free, y, X, V, K) for start in starts[:5]), key=lambda fit: fit["value"])


def robust(fit, study, y, X):
    """CR2 standard errors (Bell & McCaffrey 2002; Pustejovsky & Tipton 2018) and Satterthwaite df."""
    n, p = X.shape
    Phi, W, M = fit["Phi"], fit["W"], fit["M"]
    IH = np.eye(n) - X @ M @ X.T @ W
    e = IH @ y
    meat = np.zeros((p, p))
    parts = []
    for name in dict.fromkeys(study):
        k = np.where(study == name)[0]
        D = cholesky(Phi[np.ix_(k, k)])
        S = IH[k] @ Phi @ IH[k].T
        values, vectors = np.linalg.eigh(D @ S @ D.T)
        keep = values > 1e-11 * values.max()
        U = vectors[:, keep]
        A = D.T @ (U / np.sqrt(values[keep])) @ U.T @ D
        WX = W[np.ix_(k, k)] @ X[k]
        s = WX.T @ A @ e[k]
        meat += np.outer(s, s)
        parts.append(IH[k].T @ A @ WX @ M)
    covariance = M @ meat @ M
    df = []
    for j in range(p):
        pk = np.column_stack([part[:, j] for part in parts])
        G = pk.T @ Phi @ pk
        df.append(np.trace(G) ** 2 / (G**2).sum())
    return np.sqrt(np.diag(covariance)), np.array(df)


here = []
for band in dict.fromkeys(number["band"] for number in SITE):
    rows = [row for row in ROWS if row["band"] == band]
    names = [name for name in rows[0] if name[0] == "x" and name[1:].isdigit() and rows[0][name] != ""]
    X = np.array([[float(row[name]) for name in names] for row in rows])
    y, v = (np.array([float(row[name]) for row in rows]) for name in "yv")
    study, cohort = (np.array([row[name] for row in rows]) for name in ("study", "cohort"))
    K = (study[:, None] == study).astype(float)
    if WEIGHTING == "mixed":
        fit = fit_reml(study, y, X, sampling(study, cohort, v), K)
    else:
        fit = at(np.zeros(2), y, X, np.diag(v) if WEIGHTING == "precision" else np.eye(len(y)), K)
    errors, df = robust(fit, study, y, X)
    here.extend(np.column_stack([fit["beta"], errors, df]).ravel())
    if WEIGHTING == "mixed":
        here.extend([*fit["theta"], fit["value"]])

largest = 0.0
for number, mine in zip(SITE, here, strict=True):
    theirs = float(number["value"])
    largest = max(largest, abs(mine - theirs) / abs(theirs) if theirs else abs(mine))
    print(f'{number["band"]:6} {number["quantity"]:42} here {mine:<16.9g} site {theirs:.9g}')
print(f"largest relative difference: {largest:.3g}")
`;
