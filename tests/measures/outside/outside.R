# Recomputes the cases that come on standard input, one a line: the kind, then vectors of numbers, all parted by ';',
# numbers by ','. Answers each with a line of numbers, 'NA' for an undefined one, or '-' for a kind that R has not.
suppressPackageStartupMessages(library(survival))

wilson <- function(x, n) suppressWarnings(prop.test(x, n, correct = FALSE)$conf.int[1:2])
table2 <- function(a, b) matrix(c(a[1], a[2] - a[1], b[1], b[2] - b[1]), 2, byrow = TRUE)
shares <- function(v) matrix(v, ncol = 2, byrow = TRUE)
lots <- function(v) array(unlist(lapply(v, function(t) matrix(t, 2, byrow = TRUE))), c(2, 2, length(v)))

# Seeds one by one from triples of day, germinated, censored.
seeds <- function(v, group, stratum) {
  m <- matrix(v, ncol = 3, byrow = TRUE)
  data.frame(
    day = c(rep(m[, 1], m[, 2]), rep(m[, 1], m[, 3])),
    up = c(rep(1, sum(m[, 2])), rep(0, sum(m[, 3]))),
    group = group, stratum = stratum)
}

log_rank <- function(d, stratified) {
  t <- if (stratified) survdiff(Surv(day, up) ~ group + strata(stratum), data = d)
       else survdiff(Surv(day, up) ~ group, data = d)
  o <- if (stratified) rowSums(t$obs) else t$obs
  e <- if (stratified) rowSums(t$exp) else t$exp
  c(o[1], e[1], t$var[1, 1], t$chisq, pchisq(t$chisq, 1, lower.tail = FALSE))
}

# One-sided p of Fisher for every table, then the greatest chance, over the common share, of one that is as small.
boschloo <- function(a, b) {
  n1 <- a[2]; n2 <- b[2]
  p <- outer(0:n1, 0:n2, function(x, y) phyper(x - 1, n1, n2, x + y, lower.tail = FALSE))
  region <- p <= p[a[1] + 1, b[1] + 1] * (1 + 1e-7)
  chance <- function(share) sum(outer(dbinom(0:n1, n1, share), dbinom(0:n2, n2, share))[region])
  grid <- (1:1999) / 2000
  best <- grid[which.max(sapply(grid, chance))]
  optimize(chance, c(best - 1 / 2000, best + 1 / 2000), maximum = TRUE, tol = 1e-10)$objective
}

both_reach <- function(h, r) {
  if (r == 1) return(pnorm(-h))
  integrate(function(x) dnorm(x) * pnorm((r * x - h) / sqrt(1 - r^2)), h, Inf, rel.tol = 1e-12, abs.tol = 0)$value
}

kinds <- list(
  "boschloo" = function(v) boschloo(v[[1]], v[[2]]),
  "t-tail" = function(v) pt(v[[1]], v[[2]], lower.tail = FALSE),
  "both-reach" = function(v) both_reach(v[[1]][1], v[[1]][2]),
  "joint" = function(v) {
    p <- v[[1]]
    min(1, p + sum(sapply(v[[2]], function(r) max(0, p - both_reach(qnorm(p, lower.tail = FALSE), r)))))
  },
  "stratified" = function(v) mantelhaen.test(lots(v), exact = TRUE, alternative = "greater")$p.value,
  "of-dishes" = function(v) {
    p <- v[[1]]; factor <- v[[2]][1]; df <- v[[2]][2]; most <- 1 + (v[[2]][3] - 1) * 0.1
    t <- qnorm(p, lower.tail = FALSE) / sqrt(factor)
    if (v[[3]] == 1) return(pt(t, df, lower.tail = FALSE))
    # Of the logarithm, so that a density without bound at 0 does no harm.
    of <- function(y) { x <- exp(y); x * dchisq(x, df) * pnorm(t * sqrt(x / df), lower.tail = FALSE) }
    pnorm(t / sqrt(most), lower.tail = FALSE) * pchisq(df / most, df) +
      integrate(of, log(df / most), log(2000), rel.tol = 1e-12, abs.tol = 0, subdivisions = 1000)$value
  },
  "normal-quantile" = function(v) qnorm(v[[1]]),
  "chi-square-tail" = function(v) pchisq(v[[1]], v[[2]], lower.tail = FALSE),
  "binomial" = function(v) dbinom(0:v[[1]][1], v[[1]][1], v[[1]][2]),
  "hypergeometric" = function(v) {
    n <- v[[1]]
    dhyper(max(0, n[3] - n[2]):min(n[1], n[3]), n[1], n[2], n[3])
  },
  "proportion" = function(v) c(wilson(v[[1]][1], v[[1]][2]), binom.test(v[[1]][1], v[[1]][2])$conf.int[1:2]),
  "difference" = function(v) {
    p <- v[[1]][1] / v[[1]][2]; q <- v[[2]][1] / v[[2]][2]
    u <- wilson(v[[1]][1], v[[1]][2]); w <- wilson(v[[2]][1], v[[2]][2])
    c(p - q, p - q - sqrt((p - u[1])^2 + (w[2] - q)^2), p - q + sqrt((u[2] - p)^2 + (q - w[1])^2))
  },
  "fisher" = function(v) sapply(c("two.sided", "greater", "less"), function(side)
    fisher.test(table2(v[[1]], v[[2]]), alternative = side)$p.value),
  "log-rank" = function(v) log_rank(rbind(seeds(v[[1]], 1, 1), seeds(v[[2]], 2, 1)), FALSE),
  "stratified-log-rank" = function(v) log_rank(do.call(rbind, lapply(seq_along(v), function(i)
    seeds(v[[i]], 2 - i %% 2, (i + 1) %/% 2))), TRUE),
  "kaplan-meier" = function(v) {
    f <- survfit(Surv(day, up) ~ 1, data = seeds(v[[1]], 1, 1), conf.type = "log-log")
    s <- summary(f)
    error <- ifelse(s$surv > 0, s$std.err, NA)
    m <- summary(f)$table
    c(rbind(s$time, s$surv, error, s$lower, s$upper), m[["median"]], m[["0.95LCL"]], m[["0.95UCL"]])
  },
  "heterogeneity" = function(v) {
    m <- shares(v[[1]])
    t <- suppressWarnings(prop.test(m[, 1], m[, 2], correct = FALSE))
    c(t$statistic, t$parameter, t$p.value)
  },
  "trend" = function(v) {
    m <- shares(v[[2]])
    t <- suppressWarnings(prop.trend.test(m[, 1], m[, 2], v[[1]]))
    c(t$statistic, t$p.value)
  },
  "mantel-haenszel" = function(v) {
    t <- mantelhaen.test(lots(v), correct = FALSE)
    cc <- mantelhaen.test(lots(v), correct = TRUE)
    c(t$estimate, t$conf.int[1:2], t$statistic, t$p.value, cc$statistic, cc$p.value)
  },
  "holm" = function(v) p.adjust(v[[1]], "holm"),
  "range" = function(v) {
    k <- v[[1]][1]; m <- v[[1]][2]; p <- v[[1]][3]
    below <- pbinom(-1:m, m, p)
    within <- function(r) sum(sapply(0:m, function(a) {
      top <- below[min(m, a + r) + 2]
      (top - below[a + 1])^k - (top - below[a + 2])^k
    }))
    r <- 0
    while (1 - within(r) > 0.025) r <- r + 1
    r
  }
)

for (line in readLines(file("stdin"))) {
  parts <- strsplit(line, ";")[[1]]
  compute <- kinds[[parts[1]]]
  vectors <- lapply(strsplit(parts[-1], ","), as.numeric)
  cat(if (is.null(compute)) "-" else paste(formatC(compute(vectors), digits = 17, format = "g"), collapse = " "), "\n")
}
