# One lme4 fit of simulated readings; loading the package and the data is left out. Prints figures as JSON.
# Arguments: folder of the columns, number of readings, "readings" or "collapsed", our sds (setup ... residual).
a <- commandArgs(TRUE)
folder <- a[1]; N <- as.integer(a[2]); collapsed <- a[3] == "collapsed"
suppressPackageStartupMessages(library(lme4))
int <- function(name) readBin(file.path(folder, name), "integer", N)
d <- data.frame(value = readBin(file.path(folder, "value"), "double", N))
for (name in c("setup", "dimension", "technician", "gauge")) d[[name]] <- factor(int(name))
control <- lmerControl(calc.derivs = FALSE)
if (collapsed) {
  # The setup is absorbed: setup means, each weighted with its number of readings, with the setup for residual.
  n <- tabulate(d$setup)
  d <- data.frame(value = rowsum(d$value, d$setup)[, 1] / n, n = n, d[!duplicated(d$setup), c("dimension", "technician", "gauge")])
  form <- value ~ 1 + (1 | dimension) + (1 | technician) + (1 | gauge)
  seconds <- system.time(m <- lmer(form, d, weights = n, control = control))[["elapsed"]]
} else {
  form <- value ~ 1 + (1 | dimension) + (1 | technician) + (1 | gauge) + (1 | setup)
  seconds <- system.time(m <- lmer(form, d, control = control))[["elapsed"]]
}
difference <- "null"
if (!collapsed && length(a) > 4) {
  # The criterion at our parameters, by lme4's own function of them.
  ours <- as.numeric(strsplit(a[4], ",")[[1]]); names(ours) <- c("dimension", "technician", "gauge", "setup", "residual")
  f <- lmer(form, d, control = control, devFunOnly = TRUE)
  order <- names(getME(m, "cnms"))
  difference <- sprintf("%.3e", f(ours[order] / ours[["residual"]]) - as.numeric(a[5]))
}
cat(sprintf('{"seconds": %.4f, "version": "%s", "criterionDifference": %s}\n', seconds, packageVersion("lme4"), difference))
