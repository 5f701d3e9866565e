# The published trials (data/published/arms.csv) read, turned into effects and fitted without any of the project's code:
# base R 4.2.2 and engine.R beside this file. Writes published-trials.json, which the tests read; they need no R.
#
#   cd tests/reference && Rscript published.R > published-trials.json
#
# Assumed, as the project's settings begin: correlation of before with after 0.87 where a row gives none, correlation of
# sampling errors 0.5 between rows of the same people, light loads below 60 % of 1RM, a printed standardised change by
# the SD before, a bound of p as p, an equal share of people printed as a total (rounded down).
source("engine.R")
a <- read.csv("../../data/published/arms.csv", encoding = "UTF-8", colClasses = "character", na.strings = "")
a$line <- seq_len(nrow(a)) + 1
RHO <- 0.5; R0 <- 0.87; SPLIT <- 60

# ---- cells: a range counts by its middle, a bound by itself --------------------------------------------------------
num <- function(x) vapply(strsplit(sub("^<", "", x), "-(?=[0-9])", perl = TRUE), function(p) {
  if (length(p) == 1 && is.na(p)) return(NA_real_)
  if (p[1] == "") p <- c(paste0("-", p[2]))                    # a negative number
  mean(as.numeric(p)) }, 0)
N <- function(name) num(a[[name]])
n <- ifelse(is.na(N("n")), floor(N("n_total") / N("n_total_arms")), N("n"))
reserve <- ifelse(is.na(N("reserve_reps")), N("reps_possible") - N("reps_per_set"), N("reserve_reps"))
reserve <- round(reserve, 9)
# Mean repetitions at 15, 20, ..., 95 % of 1RM in the bench press: Nuzzo, Pinto, Nosaka & Steele 2024, Sports Med 54:303.
MEAN <- c(127.49, 100.02, 78.88, 62.62, 50.1, 40.45, 33.01, 27.25, 22.79, 19.34, 16.59, 14.08, 11.51, 8.82, 6.23, 4.11, 2.59)
load <- ifelse(is.na(N("load_pct_1rm")), approx(MEAN, seq(15, 95, 5), N("load_rm"))$y, N("load_pct_1rm"))

# ---- which rows: a reserve, no work beyond failure, the end of the training ----------------------------------------
key <- do.call(paste, c(a[c("study", "arm", "exercise", "muscle", "outcome", "measure", "unit")], sep = "|"))
weeks <- N("weeks")
last <- ave(ifelse(is.na(weeks), -1, weeks), key, FUN = max)
at_end <- is.na(weeks) | weeks == last
plain <- is.na(a$beyond_failure) | a$beyond_failure == "none"
kept <- at_end & plain & !is.na(reserve)

# ---- log ratio and its variance -------------------------------------------------------------------------------------
b <- N("baseline_mean"); f <- N("followup_mean"); ch <- N("change_mean"); pc <- N("percent_change"); p <- N("change_p")
s1 <- N("baseline_sd"); s2 <- N("followup_sd"); d <- N("effect")
sd_of_p <- function(change, i) abs(change) / qt(1 - p[i] / 2, n[i] - 1) * sqrt(n[i])
effect <- function(i) {
  if (is.na(n[i])) return(c(NA, NA))
  is_bound <- grepl("^<", a$change_p[i])
  m1 <- b[i]; m2 <- f[i]
  if (is.na(m1) && !is.na(ch[i]) && !is.na(pc[i])) m1 <- 100 * ch[i] / pc[i]
  if (is.na(m2) && !is.na(m1)) m2 <- if (!is.na(ch[i])) m1 + ch[i] else m1 * (1 + pc[i] / 100)
  sc <- N("change_sd")[i]
  if (is.na(sc)) sc <- N("change_se")[i] * sqrt(n[i])
  sp <- N("percent_change_sd")[i]
  if (is.na(sp)) sp <- N("percent_change_se")[i] * sqrt(n[i])
  # A spread of per cents that is printed says more than a test of the change.
  if (!is.na(m1) && is.na(sc) && !is.na(sp)) {
    both <- !is.na(b[i]) && !is.na(f[i])
    return(c(if (both) log(f[i] / b[i]) else log(1 + pc[i] / 100), sp^2 / (n[i] * (100 + pc[i])^2)))
  }
  if (!is.na(m1)) {
    if (is.na(sc) && !is.na(p[i])) sc <- sd_of_p(m2 - m1, i)
    y <- log(m2 / m1)
    if (is.na(s1[i])) return(c(y, sc^2 / (n[i] * m1 * m2)))
    r <- R0
    if (!is.na(sc)) { solved <- (s1[i]^2 + s2[i]^2 - sc^2) / (2 * s1[i] * s2[i]); if (abs(solved) < 1) r <- solved }
    return(c(y, s1[i]^2 / (n[i] * m1^2) + s2[i]^2 / (n[i] * m2^2) - 2 * r * s1[i] * s2[i] / (n[i] * m1 * m2)))
  }
  if (is.na(pc[i])) return(c(NA, NA))
  y <- log(1 + pc[i] / 100)
  if (is.na(sp) && !is.na(p[i])) sp <- sd_of_p(pc[i], i)
  if (!is.na(sp)) return(c(y, sp^2 / (n[i] * (100 + pc[i])^2)))
  if (is.na(d[i]) || pc[i] / d[i] <= 0) return(c(NA, NA))
  s <- pc[i] / d[i]; m2 <- 100 + pc[i]
  c(y, s^2 / n[i] * (1 / 100^2 + 1 / m2^2 - 2 * R0 / (100 * m2)))
}
yv <- t(vapply(seq_len(nrow(a)), effect, c(0, 0)))

# ---- fits -----------------------------------------------------------------------------------------------------------
fit_case <- function(outcome, band) {
  ok <- kept & a$outcome == outcome & !is.na(yv[, 2]) & yv[, 2] > 0
  if (band != "all") ok <- ok & !is.na(load) & (if (band == "light") load < SPLIT else load >= SPLIT)
  i <- which(ok)
  one <- function(form) {
    X <- if (form == "level") cbind(level = rep(1, length(i))) else cbind(level = 1, reserve = reserve[i])
    z <- full_fit(make_problem(yv[i, 1], X, yv[i, 2], a$study[i], a$cohort[i], RHO))
    list(form = form, tau2 = z$th$th[1], omega2 = z$th$th[2], beta = AR(z$g$beta), se = AR(sqrt(diag(z$g$M))),
         reml = z$g$reml, ml = z$ml$g$ml, robust_se = AR(z$co$se), df = AR(z$co$df))
  }
  list(outcome = outcome, band = band, studies = length(unique(a$study[i])),
       rows = lapply(i, function(k) list(line = a$line[k], reserve = reserve[k], y = yv[k, 1], v = yv[k, 2])),
       fits = lapply(c("level", "line"), one))
}
cases <- list()
for (o in c("growth", "strength")) for (w in c("light", "heavy", "all")) cases[[length(cases) + 1]] <- fit_case(o, w)
cat(J(list(made_with = paste("base", R.version.string, "and engine.R"), rho = RHO, assumed_correlation = R0,
           split = SPLIT, cases = cases)), "\n")
