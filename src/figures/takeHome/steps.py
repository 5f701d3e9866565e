# %% [markdown]
# ## 1. Effects
#
# Each row is one arm of a study: `y` is its effect (before against after, on the scale named above) and `v` the
# sampling variance of `y`, both worked out from what the paper printed. `reserve` is how many repetitions were left.
# Rows of one study share what is special about that study. Rows of one cohort in a study measured the same people,
# so their sampling errors go together as well.

# %%
import numpy as np
from scipy.linalg import cholesky, solve_triangular
from scipy.special import stdtrit


def read_band(name):
    """Rows of a band as columns; studies and cohorts by their number, 0 for no cohort."""
    rows = np.array(BANDS[name]["rows"], dtype=float)
    band = {column: rows[:, j] for j, column in enumerate(COLUMNS)}
    return band | {"covariates": rows[:, len(COLUMNS) :]}


bands = {name: read_band(name) for name in BANDS}
for name, band in bands.items():
    print(f'{name}: {len(band["y"])} rows of {len(set(band["study"]))} studies, reserve {band["reserve"].min():g} to {band["reserve"].max():g}')

# %% [markdown]
# ## 2. Design
#
# The curve of growth against reserve r is a weighted sum of a few columns. A line has 1 and r; a logarithm 1 and
# ln(1 + r); a parabola 1, r and r²; the flexible curve 1, r, r² and ln(1 + r); a restricted cubic spline 1, r and one
# column that bends between its knots (Harrell 2015). Covariates come as deviations from their mean, so that the curve
# is that of average rows.


# %%
def spline(r, knots):
    first, middle, last = knots
    cube = lambda knot: np.maximum(r - knot, 0) ** 3
    bend = cube(first) - cube(middle) * (last - first) / (last - middle) + cube(last) * (middle - first) / (last - middle)
    return bend / (last - first) ** 2


def curve_columns(name, r):
    """Columns of the curve at reserves r: one row a reserve."""
    r = np.asarray(r, dtype=float)
    shapes = {
        "line": lambda: [r],
        "log": lambda: [np.log1p(r)],
        "quadratic": lambda: [r, r**2],
        "flexible": lambda: [r, r**2, np.log1p(r)],
        "spline": lambda: [r, spline(r, BANDS[name]["knots"])],
    }
    return np.column_stack([np.ones_like(r), *shapes[BANDS[name]["curve"]]()])


designs = {name: np.hstack([curve_columns(name, band["reserve"]), band["covariates"]]) for name, band in bands.items()}

# %% [markdown]
# ## 3. Weights: how the rows vary together
#
# The covariance of the effects is sampling covariance, plus tau2 shared by all rows of a study, plus omega2 of each
# row by itself. Inside a cohort the sampling errors of two rows correlate by RHO. Its inverse weighs the rows: a
# precise row counts for more, and ten rows of one study for less than ten studies.


# %%
def sampling(study, cohort, v):
    """Sampling covariance: RHO sqrt(v_i v_j) inside a cohort of a study, v on the diagonal."""
    same = (study[:, None] == study) & (cohort[:, None] == cohort) & (cohort > 0)
    covariance = np.where(same, RHO * np.sqrt(np.outer(v, v)), 0.0)
    np.fill_diagonal(covariance, v)
    return covariance


# %% [markdown]
# ## 4. REML: how much studies and rows differ
#
# tau2 and omega2 are those under which the residuals are likeliest, allowing for the coefficients that were fitted
# (restricted maximum likelihood; Patterson & Thompson 1971). `at` is the restricted log-likelihood with its first and
# second derivatives; `climb` goes uphill by Newton's steps; several starts, since there can be two hills.


# %%
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


def fit_band(name):
    study, cohort, y, v = (bands[name][column] for column in ("study", "cohort", "y", "v"))
    X, K = designs[name], (study[:, None] == study).astype(float)
    if WEIGHTING == "mixed":
        return fit_reml(study, y, X, sampling(study, cohort, v), K)
    return at(np.zeros(2), y, X, np.diag(v) if WEIGHTING == "precision" else np.eye(len(y)), K)


fits = {name: fit_band(name) for name in bands}
for name, fit in fits.items():
    study = bands[name]["study"]
    each = {k: fit["W"][np.ix_(study == k, study == k)].sum() for k in dict.fromkeys(study)}
    heaviest = sorted(each, key=each.get, reverse=True)[:3]
    weights = ", ".join(f"{STUDIES[int(k) - 1]} {100 * each[k] / sum(each.values()):.1f} %" for k in heaviest)
    print(f"{name}: most weight on {weights}")

# %% [markdown]
# ## 5. CR2: errors that hold where the covariance is guessed wrongly
#
# The guessed covariance weighs the rows, but the standard errors come from the residuals themselves, study by study,
# each study's corrected for what the fit took from it (CR2; Bell & McCaffrey 2002; Pustejovsky & Tipton 2018).


# %%
def robust(name):
    """CR2 covariance of the coefficients, and what the degrees of freedom of any contrast need."""
    fit, X, y, study = fits[name], designs[name], bands[name]["y"], bands[name]["study"]
    n, p = X.shape
    Phi, W, M = fit["Phi"], fit["W"], fit["M"]
    IH = np.eye(n) - X @ M @ X.T @ W
    e = IH @ y
    meat = np.zeros((p, p))
    parts = []
    for number in dict.fromkeys(study):
        k = np.where(study == number)[0]
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
    B = np.hstack(parts)
    G = (B.T @ Phi @ B).reshape(len(parts), p, len(parts), p)
    return dict(covariance=M @ meat @ M, G=G)


spreads = {name: robust(name) for name in bands}

# %% [markdown]
# ## 6. Degrees of freedom
#
# A standard error from few studies is itself uncertain. Satterthwaite's degrees of freedom say how much, one number
# for each question asked of the fit (a contrast: a coefficient, or a difference between two points of the curve).


# %%
def infer(name, contrast):
    """Estimate, robust standard error and degrees of freedom of a contrast of the coefficients."""
    G = np.tensordot(spreads[name]["G"] @ contrast, contrast, axes=(1, 0))
    error = np.sqrt(contrast @ spreads[name]["covariance"] @ contrast)
    return contrast @ fits[name]["beta"], error, np.trace(G) ** 2 / (G**2).sum()


# %% [markdown]
# ## 7. The target
#
# The target is the largest reserve that still keeps KEPT_SHARE of the growth at reserve 0: up to there growth at r
# less KEPT_SHARE of growth at 0 is not below nothing. Its interval holds every reserve of which that cannot be ruled
# out (Fieller 1954), up to the first one at which the share is surely lost.


# %%
def halve(f, low, high):
    """Where f changes its sign between two places."""
    positive = f(low) > 0
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if (f(middle) > 0) == positive else (low, middle)
    return (low + high) / 2


def find_target(name):
    """Point, lower end and upper end in repetitions; no number where there is no upper end."""
    width = designs[name].shape[1]

    def contrast(r):
        x = curve_columns(name, [r, 0.0])
        return np.append(x[0] - KEPT_SHARE * x[1], np.zeros(width - x.shape[1]))

    def kept(r):
        return contrast(r) @ fits[name]["beta"]

    def beyond(r):
        """Above 0 where the difference is not to be put down to chance."""
        estimate, error, df = infer(name, contrast(r))
        return abs(estimate) / error - stdtrit(df, 0.5 + CONFIDENCE / 2)

    furthest = bands[name]["reserve"].max()
    steps = max(1, int(np.ceil(furthest / 0.02)))
    grid = [furthest if i == steps else 0.02 * i for i in range(steps + 1)]
    held = [beyond(r) <= 0 for r in grid]
    lost = [kept(r) < 0 for r in grid]
    surely = [i for i in range(len(grid)) if lost[i] and not held[i]]
    point = halve(kept, grid[lost.index(True) - 1], grid[lost.index(True)]) if True in lost else furthest
    first = held.index(True) if True in held else None
    low = furthest if first is None else 0.0 if first == 0 else halve(beyond, grid[first - 1], grid[first])
    inside = [i for i in range(surely[0]) if held[i]] if surely else []
    high = halve(beyond, grid[inside[-1]], grid[inside[-1] + 1]) if inside else point
    return point, min(low, point), max(high, point) if surely else None


# %% [markdown]
# ## 8. These numbers beside the site's
#
# Both were worked out from the same rows by programs that share no code.

# %%
here = []
for name, fit in fits.items():
    for contrast in np.eye(designs[name].shape[1]):
        here.extend(infer(name, contrast))
    if WEIGHTING == "mixed":
        here.extend([*fit["theta"], fit["value"]])
    if name not in NO_TARGET:
        here.extend(number for number in find_target(name) if number is not None)

largest = 0.0
for (name, quantity, theirs), mine in zip(SITE, here, strict=True):
    largest = max(largest, abs(mine - theirs) / abs(theirs) if theirs else abs(mine))
    print(f"{name:6} {quantity:42} here {mine:<16.9g} site {theirs:.9g}")
for name, reason in NO_FIT.items():
    print(f"{name}: not fitted: {reason}")
for name, reason in NO_TARGET.items():
    print(f"{name}: {reason}")
if SITE:
    print(f"largest relative difference: {largest:.3g}")
else:
    print("nothing was fitted, so there is nothing to compare")
