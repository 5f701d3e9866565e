# One more study in a table: the expected CR2 covariance and the refit, by whole matrices and without the formulas of
# src/model/plan/. V is a quadratic form in y, so that its mean over y0 + d, d ~ N(0, L L'), is
# V(y0) + sum over columns l of L of (V(y0 + l) + V(y0 - l))/2 - V(y0), exactly.
# Made with engine.R beside this file. Run in this folder: Rscript plan.R > plan.json
source("engine.R")
x <- function(r) cbind(1, r, r^2, log1p(r))
plan_case <- function(name, rho, reserves, people, within, cv, r, shift) {
  dat <- read.csv(paste0(name, ".csv"), colClasses = c(cohort = "character"))
  d <- make_problem(dat$y, x(dat$reserve), dat$v, dat$study, dat$cohort, rho)
  f <- full_fit(d, ml = FALSE); th <- f$th$th; beta <- as.vector(f$g$beta); C <- f$cr$V
  m <- length(reserves); Xp <- x(reserves); vp <- rep(2 * cv^2 * (1 - r) / people, m)
  cohort <- if (within) rep("people", m) else paste0("arm", seq_len(m))
  all <- function(yp) make_problem(c(dat$y, yp), rbind(x(dat$reserve), Xp), c(dat$v, vp), c(dat$study, rep("planned study", m)),
    c(dat$cohort, cohort), rho)
  d1 <- all(as.vector(Xp %*% beta)); new <- (d$n + 1):(d$n + m)
  g <- gls_at(d1, th[1], th[2]); W <- chol2inv(g$R)
  V <- function(dev) { y <- d1$y; y[new] <- y[new] + dev; cr2(d1$X, y, d1$study, g$Sig, W)$V }
  L <- t(chol(g$Sig[new, new] + Xp %*% C %*% t(Xp)))
  V0 <- V(rep(0, m)); EV <- V0
  for (j in seq_len(m)) EV <- EV + (V(L[, j]) + V(-L[, j])) / 2 - V0
  dev <- as.vector(L %*% rep(c(1, -0.5, 0.25), length.out = m))
  one <- cr2(d1$X, { y <- d1$y; y[new] <- y[new] + dev; y }, d1$study, g$Sig, W)
  at <- gls_at({ z <- d1; z$y[new] <- z$y[new] + dev; z }, th[1], th[2])
  K <- rbind(growth_at_0 = as.vector(x(0)), loss_to_3 = as.vector(x(3) - x(0)), keeps_90_at_2 = as.vector(x(2) - 0.9 * x(0)))
  d2 <- all(as.vector(Xp %*% beta) + shift); f2 <- full_fit(d2, ml = FALSE); cc <- contrast(f2$g$beta, f2$cr, K)
  list(name = name, rho = rho, reserves = reserves, people = people, within = within, cv = cv, correlation = r,
    variance = vp[1], expected_effect = as.vector(Xp %*% beta), tau2 = th[1], omega2 = th[2],
    expected_cov = EV, model_cov = g$M, df = satt(one, K), contrasts = lapply(seq_len(nrow(K)), function(i) as.vector(K[i, ])),
    outcome = list(deviates = rep(c(1, -0.5, 0.25), length.out = m), beta = as.vector(at$beta), cov = one$V),
    refit = list(effects = as.vector(Xp %*% beta) + shift, tau2 = f2$th$th[1], omega2 = f2$th$th[2], est = cc$est, se = cc$se, df = cc$df))
}
cat(J(list(
  plan_case("sim4", 0.5, c(0, 2), 20, FALSE, 0.14, 0.95, c(0.02, -0.01)),
  plan_case("sim4", 0.5, c(1, 3, 6), 15, TRUE, 0.14, 0.95, c(0.01, 0.01, -0.02)),
  plan_case("sim7", 0.8, c(4, 9), 100, FALSE, 0.2, 0.9, c(-0.02, 0.02)))), "\n")
