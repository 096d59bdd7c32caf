package org.flitchbook.pdf;

import org.flitchbook.document.Chart;

/** The plot of a chart on its page: where a value of each axis stands, in points. */
record Plot(
    double left, double top, double width, double height, Chart.Axis xAxis, Chart.Axis yAxis) {
  double x(double value) {
    return left + width * (value - xAxis.min()) / (xAxis.max() - xAxis.min());
  }

  double y(double value) {
    return top + height * (yAxis.max() - value) / (yAxis.max() - yAxis.min());
  }

  double right() {
    return left + width;
  }

  double bottom() {
    return top + height;
  }
}
