# Reference fits of the flexible curve, 1, r, r^2, ln(1 + r), made with engine.R beside this file.
# Run in this folder: Rscript flexible.R > flexible.json
source("engine.R")
x <- function(r) cbind(1, r, r^2, log1p(r))

fit_case <- function(name, rho) {
  dat <- read.csv(paste0(name, ".csv"), colClasses = c(cohort = "character"))
  X <- x(dat$reserve)
  colnames(X) <- c("intercept", "reserve", "reserve_sq", "log1p_reserve")
  d <- make_problem(dat$y, X, dat$v, dat$study, dat$cohort, rho)
  f <- full_fit(d)
  g <- f$g; th <- f$th$th; se <- sqrt(diag(g$M))
  dr <- derivs(th, d, "reml")
  co <- f$co
  r0 <- as.vector(x(0))
  C <- rbind(growth_at_0 = r0, growth_at_2 = as.vector(x(2)), loss_to_3 = as.vector(x(3)) - r0, keeps_90_at_2 = as.vector(x(2)) - 0.9 * r0)
  cc <- contrast(g$beta, f$cr, C)
  W0 <- diag(1 / d$v); cr0 <- cr2(d$X, d$y, d$study, diag(d$v), W0)
  lm0 <- lm(d$y ~ d$X - 1, weights = 1 / d$v)
  c0 <- contrast(coef(lm0), cr0, diag(d$p))
  list(
    form = "flexible", columns = AR(colnames(X)), n = d$n, studies = length(d$ids), p = d$p, knots = NULL,
    free = c(TRUE, TRUE),
    reml = list(tau2 = th[1], omega2 = th[2], beta = as.vector(g$beta), se = se, cov = g$M, loglik = g$reml,
      ml_loglik_at_reml = g$ml, resid_quadratic_form = g$rss, score = dr$grad, observed_hessian = dr$hess,
      expected_information = dr$info, boundary_tau2 = th[1] == 0, boundary_omega2 = th[2] == 0),
    ml = list(tau2 = f$ml$th$th[1], omega2 = f$ml$th$th[2], beta = as.vector(f$ml$g$beta), loglik = f$ml$g$ml,
      q = f$ml$q, AIC = f$ml$aic, AICc = f$ml$aicc),
    cr2 = list(cov = f$cr$V, se = co$se, df = co$df, t = co$t, p = co$pval, ci_lo = co$lo, ci_hi = co$hi,
      min_eig_ratio_B = f$cr$min_eig_ratio, dropped_eigenvalues = f$cr$dropped),
    wls = list(beta = as.vector(coef(lm0)), se_fixed = sqrt(diag(solve(t(d$X) %*% W0 %*% d$X))),
      loglik_ml_theta0 = gls_at(make_problem(dat$y, X, dat$v, dat$study, dat$cohort, 0), 0, 0)$ml, cr2_se = c0$se, cr2_df = c0$df),
    contrasts = lapply(seq_len(nrow(C)), function(i) list(name = rownames(C)[i], c = as.vector(C[i, ]), est = cc$est[i],
      se = cc$se[i], df = cc$df[i], p = cc$pval[i], ci_lo = cc$lo[i], ci_hi = cc$hi[i])),
    inverse = lapply(c(0.5, 0.9, 0.95, 1.02), function(p) { v <- inverse(g$beta, f$cr, x, p); v$roots <- AR(v$roots); v$set <- lapply(v$set, AR); v })
  )
}
cat(J(list(sim1 = fit_case("sim1", 0), sim4 = fit_case("sim4", 0.5), sim7 = fit_case("sim7", 0.8))), "\n")
