# Answers the drawn cases with R: node draw.mjs | Rscript agreement.R > agreement.json
# Packages beyond base R: survival, jsonlite.
suppressPackageStartupMessages({
  library(jsonlite)
  library(survival)
})

drawn <- fromJSON(file("stdin"), simplifyVector = FALSE)
numbers <- function(list) vapply(list, as.numeric, numeric(1))

# lm scales its covariance by the scatter found; cov.unscaled believes the doubts as they stand.
regression <- function(case) {
  x <- do.call(rbind, lapply(case$rows, numbers))
  colnames(x) <- paste0("x", seq_len(ncol(x)))
  u <- numbers(case$uncertainties)
  data <- data.frame(y = numbers(case$observations), x)
  fit <- lm(y ~ . - 1, data = data, weights = 1 / u^2)
  at <- setNames(as.data.frame(t(numbers(case$at))), colnames(x))
  # One new reading with a doubt of its own, on the scale of the fit.
  mean <- predict(fit, at, se.fit = TRUE, interval = "confidence", level = 0.95)
  reading <- predict(fit, at, interval = "prediction", level = 0.95,
                     weights = 1 / case$readingUncertainty^2)
  list(
    coefficients = unname(coef(fit)),
    covarianceRelative = unname(vcov(fit)),
    covarianceAbsolute = unname(summary(fit)$cov.unscaled),
    residualSumOfSquares = deviance(fit),
    degreesOfFreedom = fit$df.residual,
    sigma = summary(fit)$sigma,
    leverages = unname(hatvalues(fit)),
    fitted = mean$fit[1, "fit"],
    standardError = mean$se.fit,
    meanInterval95 = unname(mean$fit[1, c("lwr", "upr")]),
    readingInterval95 = unname(reading[1, c("lwr", "upr")])
  )
}

quantile_of <- function(case) {
  list(
    t = qt(case$probability, case$degreesOfFreedom),
    # A rounded quantile back to its probability.
    rounded = round(qt(case$probability, case$degreesOfFreedom), 3),
    probability = pt(round(qt(case$probability, case$degreesOfFreedom), 3), case$degreesOfFreedom)
  )
}

# fisher.test finds odds to about 1e-4 only, so the same equations are solved once more to the last digit.
conditional_odds <- function(cells) {
  m <- sum(cells[1, ]); n <- sum(cells[2, ]); k <- sum(cells[, 1]); a <- cells[1, 1]
  support <- max(0, k - n):min(k, m)
  central <- dhyper(support, m, n, k, log = TRUE)
  mass <- function(log_odds) {
    p <- exp(central + support * log_odds - max(central + support * log_odds))
    p / sum(p)
  }
  root <- function(f) exp(uniroot(f, c(-60, 60), tol = 1e-13, maxiter = 10000)$root)
  lowest <- a == min(support)
  highest <- a == max(support)
  list(
    odds = if (lowest) 0 else if (highest) "Inf" else
      root(function(l) sum(mass(l) * support) - a),
    low = if (lowest) 0 else root(function(l) sum(mass(l)[support >= a]) - 0.025),
    high = if (highest) "Inf" else root(function(l) 0.025 - sum(mass(l)[support <= a]))
  )
}

finite <- function(value) if (is.finite(value)) unname(value) else "Inf"

table_of <- function(case) {
  cells <- do.call(rbind, lapply(case, numbers))
  two <- fisher.test(cells)
  list(
    twoSided = two$p.value,
    less = fisher.test(cells, alternative = "less")$p.value,
    greater = fisher.test(cells, alternative = "greater")$p.value,
    odds = finite(two$estimate),
    interval95 = list(finite(two$conf.int[1]), finite(two$conf.int[2])),
    solved = conditional_odds(cells)
  )
}

survival_of <- function(case) {
  time <- vapply(case, function(one) as.numeric(one$duration), numeric(1))
  seen <- vapply(case, function(one) as.logical(one$observed), logical(1))
  fit <- survfit(Surv(time, seen) ~ 1, conf.type = "plain")
  steps <- fit$n.event > 0
  middle <- unname(summary(fit)$table["median"])
  list(
    times = I(fit$time[steps]),
    atRisk = I(fit$n.risk[steps]),
    events = I(fit$n.event[steps]),
    survival = I(fit$surv[steps]),
    # Greenwood; survfit keeps it relative to the curve. Nothing is left to be in doubt at the end.
    standardError = I(ifelse(fit$surv[steps] == 0, 0, fit$std.err[steps] * fit$surv[steps])),
    # R takes the middle of a step that lies at a half; NA when half are never reached.
    median = if (is.na(middle)) "notReached" else middle
  )
}

pair_of <- function(case) {
  welch <- t.test(numbers(case$first), numbers(case$second))
  list(
    difference = unname(welch$estimate[1] - welch$estimate[2]),
    standardError = welch$stderr,
    degreesOfFreedom = unname(welch$parameter),
    interval95 = as.numeric(welch$conf.int)
  )
}

burst_of <- function(case) {
  values <- numbers(case)
  list(mean = mean(values), deviation = sd(values), lag1 = acf(values, 1, plot = FALSE)$acf[2])
}

with_input <- function(cases, answer) {
  lapply(cases, function(case) list(input = case, output = answer(case)))
}

cat(toJSON(
  list(
    by = R.version.string,
    survivalPackage = as.character(packageVersion("survival")),
    regressions = with_input(drawn$regressions, regression),
    quantiles = with_input(drawn$quantiles, quantile_of),
    tables = with_input(drawn$tables, table_of),
    survivals = with_input(drawn$survivals, survival_of),
    pairs = with_input(drawn$pairs, pair_of),
    bursts = with_input(drawn$bursts, burst_of)
  ),
  auto_unbox = TRUE, digits = I(16)
))
cat("\n")
