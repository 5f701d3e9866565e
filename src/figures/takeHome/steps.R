# 1. Effects: y and its sampling variance v, a row an arm. Studies and cohorts go by their number, 0 for no cohort.
read_band <- function(band) {
  rows <- matrix(band$rows, ncol = length(COLUMNS) + band$covariates, byrow = TRUE)
  columns <- lapply(seq_along(COLUMNS), function(j) rows[, j])
  names(columns) <- COLUMNS
  c(columns, list(covariates = rows[, -seq_along(COLUMNS), drop = FALSE]))
}

# 2. Design: the columns of the curve at reserves r (spline: Harrell 2015), then covariates less their means.
spline_term <- function(r, knots) {
  cube <- function(knot) pmax(r - knot, 0)^3
  bend <- cube(knots[1]) - cube(knots[2]) * (knots[3] - knots[1]) / (knots[3] - knots[2]) +
    cube(knots[3]) * (knots[2] - knots[1]) / (knots[3] - knots[2])
  bend / (knots[3] - knots[1])^2
}

curve_columns <- function(band, r) {
  unname(switch(band$curve,
    line = cbind(1, r),
    log = cbind(1, log1p(r)),
    quadratic = cbind(1, r, r^2),
    flexible = cbind(1, r, r^2, log1p(r)),
    spline = cbind(1, r, spline_term(r, band$knots))
  ))
}

# 3. Weights. Sampling covariance: RHO sqrt(v_i v_j) inside a cohort of a study, v on the diagonal.
sampling <- function(d) {
  same <- outer(d$study, d$study, "==") & outer(d$cohort, d$cohort, "==") & d$cohort > 0
  V <- ifelse(same, RHO * sqrt(outer(d$v, d$v)), 0)
  diag(V) <- d$v
  V
}

# 4. REML: generalised least squares and the restricted log-likelihood at (tau2, omega2), with derivatives.
at <- function(theta, d, X, V, K) {
  n <- nrow(X); p <- ncol(X)
  Phi <- V + theta[1] * K + theta[2] * diag(n)
  W <- chol2inv(chol(Phi))
  XWX <- t(X) %*% W %*% X
  M <- solve(XWX, tol = 0)
  beta <- M %*% t(X) %*% W %*% d$y
  P <- W - W %*% X %*% M %*% t(X) %*% W
  Py <- P %*% d$y
  value <- -0.5 * ((n - p) * log(2 * pi) + as.numeric(determinant(Phi)$modulus) +
    as.numeric(determinant(XWX)$modulus) + sum(d$y * Py))
  PK <- P %*% K
  KPy <- K %*% Py
  score <- -0.5 * c(sum(diag(PK)) - sum(Py * KPy), sum(diag(P)) - sum(Py^2))
  information <- 0.5 * matrix(c(sum(PK * t(PK)), sum(PK * t(P)), sum(PK * t(P)), sum(P * P)), 2)
  curvature <- matrix(c(sum(KPy * (P %*% KPy)), sum(KPy * (P %*% Py)), sum(KPy * (P %*% Py)), sum(Py * (P %*% Py))), 2)
  list(value = value, score = score, information = information, hessian = information - curvature, Phi = Phi, W = W, M = M, beta = as.vector(beta))
}

climb <- function(theta, free, d, X, V, K) {
  here <- at(theta, d, X, V, K)
  for (i in 1:200) {
    moving <- which(free & (theta > 0 | here$score > 0))
    if (length(moving) == 0) break
    H <- -here$hessian[moving, moving, drop = FALSE]
    if (any(eigen(H, TRUE, TRUE)$values <= 0)) H <- here$information[moving, moving, drop = FALSE]
    step <- c(0, 0)
    step[moving] <- solve(H, here$score[moving], tol = 0)
    share <- 1
    repeat {
      to <- pmax(theta + share * step, 0)
      there <- at(to, d, X, V, K)
      if (there$value >= here$value - 1e-12 * abs(here$value) || share < 1e-12) break
      share <- share / 2
    }
    arrived <- max(abs(to - theta)) <= 1e-12 * max(to, 1e-300)
    theta <- to; here <- there
    if (arrived) break
  }
  c(list(theta = theta), here)
}

# The likelihood can have two maxima and maxima at 0: several starts, the best wins.
fit_reml <- function(d, X, V, K) {
  free <- c(TRUE, length(unique(d$study)) < nrow(X))
  spread <- sum(lm.fit(X, d$y)$residuals^2) / max(1, nrow(X) - ncol(X))
  shares <- c(0, 0.001, 0.015, 0.2, 2) * spread
  starts <- expand.grid(shares, if (free[2]) shares else 0)
  values <- apply(starts, 1, function(s) at(as.numeric(s), d, X, V, K)$value)
  best <- head(order(-values), 5)
  fits <- lapply(best, function(i) climb(as.numeric(starts[i, ]), free, d, X, V, K))
  fits[[which.max(sapply(fits, function(f) f$value))]]
}

# 5. CR2 covariance (Bell & McCaffrey 2002; Pustejovsky & Tipton 2018), and what degrees of freedom need.
robust <- function(f, d, X) {
  IH <- diag(nrow(X)) - X %*% f$M %*% t(X) %*% f$W
  e <- IH %*% d$y
  meat <- matrix(0, ncol(X), ncol(X)); parts <- list()
  for (study in unique(d$study)) {
    k <- which(d$study == study)
    D <- chol(f$Phi[k, k, drop = FALSE])
    S <- IH[k, , drop = FALSE] %*% f$Phi %*% t(IH[k, , drop = FALSE])
    eig <- eigen((D %*% S %*% t(D) + t(D %*% S %*% t(D))) / 2, TRUE)
    keep <- eig$values > 1e-11 * max(eig$values)
    U <- eig$vectors[, keep, drop = FALSE]
    A <- t(D) %*% U %*% (t(U) / sqrt(eig$values[keep])) %*% D
    WX <- f$W[k, k] %*% X[k, , drop = FALSE]
    s <- t(WX) %*% A %*% e[k]
    meat <- meat + s %*% t(s)
    parts[[length(parts) + 1]] <- t(IH[k, , drop = FALSE]) %*% A %*% WX %*% f$M
  }
  B <- do.call(cbind, parts)
  c(f, list(covariance = f$M %*% meat %*% f$M, G = t(B) %*% f$Phi %*% B))
}

# 6. Estimate, robust standard error and Satterthwaite's degrees of freedom of a contrast of the coefficients.
infer <- function(f, contrast) {
  p <- length(contrast); m <- nrow(f$G) / p
  half <- t(matrix(contrast %*% matrix(f$G, p), m))
  G <- matrix(contrast %*% matrix(half, p), m)
  c(sum(contrast * f$beta), sqrt(sum(contrast * (f$covariance %*% contrast))), sum(diag(G))^2 / sum(G^2))
}

# 7. The target: the largest reserve that keeps KEPT_SHARE of the growth at reserve 0, and the reserves that cannot be
# ruled out (Fieller 1954) up to the first at which the share is surely lost. No number where there is no upper end.
halve <- function(f, low, high) {
  positive <- f(low) > 0
  for (i in 1:100) {
    middle <- (low + high) / 2
    if ((f(middle) > 0) == positive) low <- middle else high <- middle
  }
  (low + high) / 2
}

find_target <- function(band, f, furthest) {
  contrast <- function(r) {
    x <- curve_columns(band, c(r, 0))
    c(x[1, ] - KEPT_SHARE * x[2, ], rep(0, length(f$beta) - ncol(x)))
  }
  kept <- function(r) sum(contrast(r) * f$beta)
  beyond <- function(r) {
    asked <- infer(f, contrast(r))
    abs(asked[1]) / asked[2] - qt(0.5 + CONFIDENCE / 2, asked[3])
  }
  steps <- max(1, ceiling(furthest / 0.02))
  grid <- c(0.02 * seq(0, steps - 1), furthest)
  held <- sapply(grid, beyond) <= 0
  lost <- sapply(grid, kept) < 0
  surely <- which(lost & !held)
  point <- if (any(lost)) halve(kept, grid[which(lost)[1] - 1], grid[which(lost)[1]]) else furthest
  first <- which(held)[1]
  low <- if (is.na(first)) furthest else if (first == 1) 0 else halve(beyond, grid[first - 1], grid[first])
  if (length(surely) == 0) return(c(point, min(low, point)))
  inside <- which(held & seq_along(grid) < surely[1])
  high <- if (length(inside) > 0) halve(beyond, grid[max(inside)], grid[max(inside) + 1]) else point
  c(point, min(low, point), max(high, point))
}

# 8. These numbers beside the site's.
here <- c()
for (name in names(BANDS)) {
  band <- BANDS[[name]]
  d <- read_band(band)
  X <- cbind(curve_columns(band, d$reserve), d$covariates)
  K <- 1 * outer(d$study, d$study, "==")
  f <- if (WEIGHTING == "mixed") {
    fit_reml(d, X, sampling(d), K)
  } else {
    at(c(0, 0), d, X, if (WEIGHTING == "precision") diag(d$v, nrow(X)) else diag(nrow(X)), K)
  }
  f <- robust(f, d, X)
  for (j in seq_len(ncol(X))) here <- c(here, infer(f, as.numeric(seq_len(ncol(X)) == j)))
  if (WEIGHTING == "mixed") here <- c(here, f$theta, f$value)
  if (is.null(NO_TARGET[[name]])) here <- c(here, find_target(band, f, max(d$reserve)))
}
for (name in names(NO_FIT)) cat(name, ": not fitted: ", NO_FIT[[name]], "\n", sep = "")
for (name in names(NO_TARGET)) cat(name, ": ", NO_TARGET[[name]], "\n", sep = "")
if (nrow(SITE) == 0) {
  cat("nothing was fitted, so there is nothing to compare\n")
} else {
  if (length(here) != nrow(SITE)) stop("the site states ", nrow(SITE), " numbers and ", length(here), " were found here")
  difference <- abs(here - SITE$value) / ifelse(SITE$value == 0, 1, abs(SITE$value))
  for (i in seq_along(here)) {
    cat(sprintf("%-6s %-42s here %-16.9g site %.9g\n", SITE$band[i], SITE$quantity[i], here[i], SITE$value[i]))
  }
  cat("largest relative difference:", format(max(difference), digits = 3), "\n")
}
