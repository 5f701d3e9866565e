/** A script in base R that holds the rows and fits them again: the likelihood written out, no package. */
import type { Settings } from '../../model/settings.ts';

export interface ScriptContent {
  /** CSV of `writeDesignTable`. */
  readonly rows: string;
  /** CSV of band, quantity, value. */
  readonly siteNumbers: string;
  readonly settings: Settings;
  /** Sentences for the head of the script, one a line. */
  readonly head: readonly string[];
}

export function writeRScript({ rows, siteNumbers, settings, head }: ScriptContent): string {
  return `${head.map((line) => `# ${line}`).join('\n')}
# Run: Rscript this-file.R

rows <- read.csv(text = ${writeLines(rows)}, na.strings = "", colClasses = c(band = "character", study = "character", cohort = "character"))
site <- read.csv(text = ${writeLines(siteNumbers)}, colClasses = c("character", "character", "numeric"))
rho <- ${settings.rho}
weighting <- ${JSON.stringify(settings.weighting)}
${R_BODY}`;
}

/** A text as R's vector of its lines: Rscript breaks a line of more than 4,095 bytes, in the middle of an escape too. */
function writeLines(text: string): string {
  // A JSON string is an R string too: the same quotes and escapes.
  const lines = text.trimEnd().split('\n');
  return `c(\n${lines.map((line) => `  ${JSON.stringify(line)}`).join(',\n')}\n)`;
}

const R_BODY = `
# Sampling covariance: rho sqrt(v_i v_j) inside a cohort of a study, v on the diagonal.
sampling <- function(d, rho) {
  cohort <- ifelse(is.na(d$cohort), "", d$cohort)
  same <- outer(d$study, d$study, "==") & outer(cohort, cohort, "==") & outer(cohort != "", cohort != "", "&")
  V <- ifelse(same, rho * sqrt(outer(d$v, d$v)), 0)
  diag(V) <- d$v
  V
}

# Generalised least squares and the restricted log-likelihood at (tau2, omega2), with derivatives.
at <- function(theta, d, X, V, K) {
  n <- nrow(X); p <- ncol(X)
  Phi <- V + theta[1] * K + theta[2] * diag(n)
  W <- chol2inv(chol(Phi))
  XWX <- t(X) %*% W %*% X
  M <- solve(XWX)
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
  list(value = value, score = score, information = information, hessian = information - curvature, Phi = Phi, W = W, M = M, beta = beta)
}

climb <- function(theta, free, d, X, V, K) {
  here <- at(theta, d, X, V, K)
  for (i in 1:200) {
    moving <- which(free & (theta > 0 | here$score > 0))
    if (length(moving) == 0) break
    H <- -here$hessian[moving, moving, drop = FALSE]
    if (any(eigen(H, TRUE, TRUE)$values <= 0)) H <- here$information[moving, moving, drop = FALSE]
    step <- c(0, 0)
    step[moving] <- solve(H, here$score[moving])
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
  free <- c(TRUE, length(unique(d$study)) < nrow(d))
  spread <- sum(lm.fit(X, d$y)$residuals^2) / max(1, nrow(X) - ncol(X))
  shares <- c(0, 0.001, 0.015, 0.2, 2) * spread
  starts <- expand.grid(shares, if (free[2]) shares else 0)
  values <- apply(starts, 1, function(s) at(as.numeric(s), d, X, V, K)$value)
  best <- head(order(-values), 5)
  fits <- lapply(best, function(i) climb(as.numeric(starts[i, ]), free, d, X, V, K))
  fits[[which.max(sapply(fits, function(f) f$value))]]
}

# CR2 covariance (Bell & McCaffrey 2002; Pustejovsky & Tipton 2018) and Satterthwaite df.
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
    parts[[study]] <- t(IH[k, , drop = FALSE]) %*% A %*% WX %*% f$M
  }
  cov <- f$M %*% meat %*% f$M
  df <- sapply(seq_len(ncol(X)), function(j) {
    pk <- sapply(parts, function(part) part[, j])
    G <- t(pk) %*% f$Phi %*% pk
    sum(diag(G))^2 / sum(G^2)
  })
  list(se = sqrt(diag(cov)), df = df)
}

here <- c()
for (band in unique(site$band)) {
  d <- rows[rows$band == band, ]
  X <- as.matrix(d[, grepl("^x[0-9]+$", names(d))])
  X <- unname(X[, colSums(is.na(X)) == 0, drop = FALSE])
  K <- 1 * outer(d$study, d$study, "==")
  if (weighting == "mixed") {
    f <- fit_reml(d, X, sampling(d, rho), K)
  } else {
    f <- at(c(0, 0), d, X, if (weighting == "precision") diag(d$v) else diag(nrow(X)), K)
  }
  r <- robust(f, d, X)
  here <- c(here, as.vector(rbind(as.vector(f$beta), r$se, r$df)))
  if (weighting == "mixed") here <- c(here, f$theta, f$value)
}
difference <- abs(here - site$value) / pmax(abs(site$value), 1e-12)
difference[site$value == 0] <- abs(here[site$value == 0])
print(data.frame(band = site$band, quantity = site$quantity, here = here, site = site$value), digits = 8, right = FALSE)
cat("largest relative difference:", format(max(difference), digits = 3), "\\n")
`;
