# 8. Outcomes that stand for all: even points (the additive recurrence of Roberts 2018), each through the normal quantile.
deviates <- function(count, m) {
  ratio <- 2
  for (i in 1:60) ratio <- (1 + ratio)^(1 / (m + 1))
  matrix(qnorm((0.5 + outer(ratio^-(1:m), 1:count)) %% 1), m)
}

# What a study's residuals say of the coefficients (CR2), as one matrix a study: scores are these times the effects.
score_matrices <- function(f, d, X) {
  IH <- diag(nrow(X)) - X %*% f$M %*% t(X) %*% f$W
  lapply(unique(d$study), function(study) {
    k <- which(d$study == study)
    D <- chol(f$Phi[k, k, drop = FALSE])
    S <- IH[k, , drop = FALSE] %*% f$Phi %*% t(IH[k, , drop = FALSE])
    eig <- eigen((D %*% S %*% t(D) + t(D %*% S %*% t(D))) / 2, TRUE)
    keep <- eig$values > 1e-11 * max(eig$values)
    U <- eig$vectors[, keep, drop = FALSE]
    A <- t(D) %*% U %*% (t(U) / sqrt(eig$values[keep])) %*% D
    t(f$W[k, k] %*% X[k, , drop = FALSE]) %*% A %*% IH[k, , drop = FALSE]
  })
}

# Where f changes its sign between two places.
cross <- function(f, low, high) {
  ends <- c(f(low), f(high))
  if (prod(ends) > 0) return(c(low, high)[which.min(abs(ends))])
  uniroot(f, c(low, high), f.lower = ends[1], f.upper = ends[2], tol = 1e-13)$root
}

# 9. The target of one outcome: NA where there is none, Inf where its interval has no upper end.
outcome_target <- function(f, contrast, grid, C, reach, halves, far, nearest) {
  growth <- infer(f, contrast(0) / (1 - KEPT_SHARE))
  if (nearest > 0.5 || growth[1] - qt(0.5 + CONFIDENCE / 2, growth[3]) * growth[2] <= 0) return(c(NA, NA, NA))
  kept <- function(r) sum(contrast(r) * f$beta)
  beyond <- function(r) {
    asked <- infer(f, contrast(r))
    abs(asked[1]) / asked[2] - qt(0.5 + CONFIDENCE / 2, asked[3])
  }
  size <- function(C) sqrt(rowSums((C %*% f$covariance) * C))
  estimates <- as.vector(C %*% f$beta)
  held <- abs(estimates) <= reach * size(C)
  lost <- estimates < 0
  if (!any(lost) && all(abs(as.vector(halves$C %*% f$beta)) <= halves$reach * size(halves$C))) return(c(NA, NA, NA))
  surely <- which(lost & !held)
  point <- if (any(lost)) cross(kept, grid[which(lost)[1] - 1], grid[which(lost)[1]]) else far
  first <- which(held)[1]
  low <- if (is.na(first)) far else if (first == 1) 0 else cross(beyond, grid[first - 1], grid[first])
  if (length(surely) == 0) return(c(point, min(low, point), Inf))
  inside <- which(held & seq_along(grid) < surely[1])
  high <- if (length(inside) > 0) cross(beyond, grid[max(inside)], grid[max(inside) + 1]) else point
  c(point, min(low, point), max(high, point))
}

work_out <- function(plan) {
  band <- BANDS[[plan$band]]
  d0 <- read_band(band)
  X0 <- cbind(curve_columns(band, d0$reserve), d0$covariates)
  same <- function(d) 1 * outer(d$study, d$study, "==")
  weigh <- function(theta, d, X) {
    if (WEIGHTING == "mixed") return(at(theta, d, X, sampling(d), same(d)))
    at(c(0, 0), d, X, if (WEIGHTING == "precision") diag(d$v, nrow(X)) else diag(nrow(X)), same(d))
  }
  theta <- fit_reml(d0, X0, sampling(d0), same(d0))$theta
  f0 <- robust(weigh(theta, d0, X0), d0, X0)
  # The planned rows: expected on today's curve, off by people, rows, the study, and the curve's own error.
  d <- read_band(plan)
  n <- length(d$y); m <- plan$added; new <- (n - m + 1):n
  X <- cbind(curve_columns(plan, d$reserve), d$covariates)
  xp <- cbind(curve_columns(band, d$reserve[new]), matrix(as.numeric(plan$today), m, byrow = TRUE))
  off <- sampling(d)[new, new] + theta[1] + theta[2] * diag(m) + xp %*% f0$covariance %*% t(xp)
  outcomes <- matrix(d$y, n, OUTCOMES)
  outcomes[new, ] <- as.vector(xp %*% f0$beta) + t(chol(off)) %*% deviates(OUTCOMES, m)
  f <- robust(weigh(theta, d, X), d, X)
  betas <- f$M %*% t(X) %*% f$W %*% outcomes
  scores <- lapply(score_matrices(f, d, X), function(S) S %*% outcomes)
  # The target of each.
  far <- max(d$reserve)
  pad <- function(x) c(x, rep(0, ncol(X) - length(x)))
  contrast <- function(r) pad(curve_columns(plan, c(r, 0))[1, ] - KEPT_SHARE * curve_columns(plan, c(r, 0))[2, ])
  reach_of <- function(C) apply(C, 1, function(c) qt(0.5 + CONFIDENCE / 2, infer(f, c)[3]))
  steps <- max(1, ceiling(far / 0.1))
  grid <- c(0.1 * seq(0, steps - 1), far)
  C <- t(sapply(grid, contrast))
  half <- unique(pmin(far, 0.5 * seq_len(max(1, ceiling(far / 0.5)))))
  halves <- list(C = t(sapply(half, function(r) pad(curve_columns(plan, c(r, 0))[1, ] - curve_columns(plan, c(r, 0))[2, ]))))
  halves$reach <- reach_of(halves$C)
  reach <- reach_of(C)
  targets <- sapply(seq_len(OUTCOMES), function(i) {
    one <- f
    one$beta <- betas[, i]
    one$covariance <- f$M %*% Reduce(`+`, lapply(scores, function(s) outer(s[, i], s[, i]))) %*% f$M
    outcome_target(one, contrast, grid, C, reach, halves, far, min(d$reserve))
  })
  given <- targets[, !is.na(targets[1, ]), drop = FALSE]
  refused <- 1 - ncol(given) / OUTCOMES
  middle <- function(x) if (is.finite(median(x))) median(x) else NULL
  found <- c(refused, sum(is.infinite(given[3, ])) / OUTCOMES)
  if (refused <= 0.5) found <- c(found, middle(given[1, ]), middle(given[2, ]), middle(given[3, ]), middle(given[3, ] - given[2, ]))
  if (WEIGHTING == "mixed" && is.null(NO_TARGET[[plan$band]])) {
    r <- find_target(band, f0, max(d0$reserve))[1]
    before <- c(curve_columns(band, c(r, 0))[1, ] - KEPT_SHARE * curve_columns(band, c(r, 0))[2, ], rep(0, ncol(X0) - ncol(curve_columns(band, 0))))
    found <- c(found, sqrt(sum(before * (f0$M %*% before))), sqrt(sum(contrast(r) * (f$M %*% contrast(r)))))
  }
  found
}

# 10. These numbers beside the site's.
here <- unlist(lapply(PLANS, work_out))
if (nrow(SITE) == 0) {
  cat("no plan could be worked out, so there is nothing to compare\n")
} else {
  if (length(here) != nrow(SITE)) stop("the site states ", nrow(SITE), " numbers and ", length(here), " were found here")
  difference <- abs(here - SITE$value) / ifelse(SITE$value == 0, 1, abs(SITE$value))
  for (i in seq_along(here)) {
    cat(sprintf("%-8s %-34s here %-16.9g site %.9g\n", SITE$band[i], SITE$quantity[i], here[i], SITE$value[i]))
  }
  cat("largest relative difference:", format(max(difference), digits = 3), "\n")
}
