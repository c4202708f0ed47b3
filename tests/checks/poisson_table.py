"""Printed values of the Poisson distribution, for the build and for the browser."""

from __future__ import annotations

# A printed table of the cumulative Poisson distribution, to four places:
# https://www.scribd.com/document/96601458/Poisson-Table
PRINTED = {
    1: ".3679 .7358 .9197 .9810 .9963 .9994",
    2: ".1353 .4060 .6767 .8571 .9473 .9834 .9955",
    3: ".0498 .1991 .4232 .6472 .8153 .9161 .9665 .9881 .9962",
    5: ".0067 .0404 .1247 .2650 .4405 .6160 .7622 .8666 .9319 .9682 .9863 .9945",
}

# The least S with P(D <= S) >= level; agrees with the printed table. The first is the edge: 0.9048 >= 0.90.
MEANS = (0.1, 0.25, 0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 9)
LEAST = {
    0.90: (0, 1, 1, 2, 3, 4, 5, 5, 7, 8, 13),
    0.95: (1, 1, 2, 3, 4, 5, 5, 6, 8, 9, 14),
    0.99: (1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 17),
}
