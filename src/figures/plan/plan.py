# %% [markdown]
# ## 8. Outcomes that stand for all
#
# Even points (the additive recurrence of Roberts 2018), each through the normal quantile, so that every run is alike.

# %%
from scipy.optimize import brentq
from scipy.special import ndtri


def deviates(count, m):
    ratio = 2.0
    for _ in range(60):
        ratio = (1 + ratio) ** (1 / (m + 1))
    steps = ratio ** -np.arange(1.0, m + 1)
    return ndtri((0.5 + np.outer(steps, np.arange(1, count + 1))) % 1)


def cross(f, low, high):
    """Where f changes its sign between two places."""
    ends = f(low), f(high)
    if ends[0] * ends[1] > 0:
        return (low, high)[int(abs(ends[1]) < abs(ends[0]))]
    return brentq(f, low, high, xtol=1e-13)


def weigh(theta, band, X):
    study, y, v = band["study"], band["y"], band["v"]
    K = (study[:, None] == study).astype(float)
    if WEIGHTING == "mixed":
        return at(theta, y, X, sampling(study, band["cohort"], v), K)
    return at(np.zeros(2), y, X, np.diag(v) if WEIGHTING == "precision" else np.eye(len(y)), K)


def score_matrices(fit, X, study):
    """What a study's residuals say of the coefficients (CR2), as one matrix a study: scores are these times the effects."""
    n = len(study)
    Phi, W, M = fit["Phi"], fit["W"], fit["M"]
    IH = np.eye(n) - X @ M @ X.T @ W
    for number in dict.fromkeys(study):
        k = np.where(study == number)[0]
        D = cholesky(Phi[np.ix_(k, k)])
        values, vectors = np.linalg.eigh(D @ (IH[k] @ Phi @ IH[k].T) @ D.T)
        keep = values > 1e-11 * values.max()
        U = vectors[:, keep]
        A = D.T @ (U / np.sqrt(values[keep])) @ U.T @ D
        yield (W[np.ix_(k, k)] @ X[k]).T @ A @ IH[k]


# %% [markdown]
# ## 9. The target of one outcome
#
# None where there is none, no upper end as infinity. The degrees of freedom do not depend on how a study comes out.


# %%
def outcome_target(name, beta, covariance, asked):
    size = lambda C: np.sqrt(((C @ covariance) * C).sum(axis=1))
    growth = asked["at_0"]
    if asked["nearest"] > 0.5 or growth @ beta - asked["reach_at_0"] * np.sqrt(growth @ covariance @ growth) <= 0:
        return None
    kept = lambda r: asked["contrast"](r) @ beta

    def beyond(r):
        c = asked["contrast"](r)
        return abs(c @ beta) / np.sqrt(c @ covariance @ c) - stdtrit(infer(name, c)[2], 0.5 + CONFIDENCE / 2)

    grid, C = asked["grid"], asked["C"]
    held = np.abs(C @ beta) <= asked["reach"] * size(C)
    lost = C @ beta < 0
    if not lost.any() and np.all(np.abs(asked["halves"] @ beta) <= asked["reach_of_halves"] * size(asked["halves"])):
        return None
    far = grid[-1]
    surely = np.where(lost & ~held)[0]
    point = cross(kept, grid[lost.argmax() - 1], grid[lost.argmax()]) if lost.any() else far
    low = far if not held.any() else 0.0 if held[0] else cross(beyond, grid[held.argmax() - 1], grid[held.argmax()])
    if surely.size == 0:
        return point, min(low, point), np.inf
    inside = np.where(held[: surely[0]])[0]
    high = cross(beyond, grid[inside[-1]], grid[inside[-1] + 1]) if inside.size else point
    return point, min(low, point), max(high, point)


def middle(values):
    value = np.median(values)
    return [value] if np.isfinite(value) else []


def work_out(label):
    plan = PLANS[label]
    name, m = plan["band"], plan["added"]
    today, X0 = bands[name], designs[name]
    study, cohort, y, v = (today[column] for column in ("study", "cohort", "y", "v"))
    theta = fit_reml(study, y, X0, sampling(study, cohort, v), (study[:, None] == study).astype(float))["theta"]
    fits[name] = weigh(theta, today, X0)
    spreads[name] = robust(name)
    # The planned rows: expected on today's curve, off by people, rows, the study, and the curve's own error.
    BANDS[label] = plan
    bands[label] = band = read_band(label)
    designs[label] = X = np.hstack([curve_columns(label, band["reserve"]), band["covariates"]])
    xp = np.hstack([curve_columns(name, band["reserve"][-m:]), np.reshape(plan["today"], (m, -1))])
    off = sampling(band["study"], band["cohort"], band["v"])[-m:, -m:] + theta[0] + theta[1] * np.eye(m)
    off = off + xp @ spreads[name]["covariance"] @ xp.T
    outcomes = np.repeat(band["y"][:, None], OUTCOMES, axis=1)
    outcomes[-m:] = (xp @ fits[name]["beta"])[:, None] + cholesky(off, lower=True) @ deviates(OUTCOMES, m)
    fits[label] = fit = weigh(theta, band, X)
    spreads[label] = robust(label)
    M = fit["M"]
    betas = M @ X.T @ fit["W"] @ outcomes
    scores = [S @ outcomes for S in score_matrices(fit, X, band["study"])]
    # The target of each.
    far = band["reserve"].max()
    pad = lambda x: np.append(x, np.zeros(X.shape[1] - len(x)))
    at_0 = pad(curve_columns(label, [0.0])[0])
    contrast = lambda r: pad(curve_columns(label, [r])[0]) - KEPT_SHARE * at_0
    reach = lambda C: np.array([stdtrit(infer(label, c)[2], 0.5 + CONFIDENCE / 2) for c in C])
    steps = max(1, int(np.ceil(far / 0.1)))
    grid = np.array([far if i == steps else 0.1 * i for i in range(steps + 1)])
    C = np.array([contrast(r) for r in grid])
    half = [min(far, 0.5 * (i + 1)) for i in range(max(1, int(np.ceil(far / 0.5))))]
    halves = np.array([pad(curve_columns(label, [r])[0]) - at_0 for r in half])
    asked = dict(contrast=contrast, grid=grid, C=C, reach=reach(C), halves=halves, reach_of_halves=reach(halves))
    asked |= dict(at_0=at_0, reach_at_0=reach([at_0])[0], nearest=band["reserve"].min())
    targets = []
    for i in range(OUTCOMES):
        meat = sum(np.outer(s[:, i], s[:, i]) for s in scores)
        targets.append(outcome_target(label, betas[:, i], M @ meat @ M, asked))
    given = np.array([target for target in targets if target is not None]).reshape(-1, 3)
    refused = 1 - len(given) / OUTCOMES
    found = [refused, np.isinf(given[:, 2]).sum() / OUTCOMES]
    if refused <= 0.5:
        for values in (*given.T, given[:, 2] - given[:, 1]):
            found += middle(values)
    if WEIGHTING == "mixed" and name not in NO_TARGET:
        r = find_target(name)[0]
        x = curve_columns(name, [r, 0.0])
        before = np.append(x[0] - KEPT_SHARE * x[1], np.zeros(X0.shape[1] - x.shape[1]))
        found += [np.sqrt(c @ F["M"] @ c) for c, F in ((before, fits[name]), (contrast(r), fit))]
    return found


# %% [markdown]
# ## 10. These numbers beside the site's

# %%
here = [number for label in PLANS for number in work_out(label)]
largest = 0.0
for (label, quantity, theirs), mine in zip(SITE, here, strict=True):
    largest = max(largest, abs(mine - theirs) / abs(theirs) if theirs else abs(mine))
    print(f"{label:8} {quantity:34} here {mine:<16.9g} site {theirs:.9g}")
if SITE:
    print(f"largest relative difference: {largest:.3g}")
else:
    print("no plan could be worked out, so there is nothing to compare")
