import { useMemo } from 'react';
import { type Chart, drawChart } from '../../report/chart.ts';
import { DrawingView } from './DrawingView.tsx';

/** A chart on the page, one pixel a unit. */
export function ChartView({ chart, width }: { readonly chart: Chart; readonly width: number }) {
  const drawing = useMemo(() => drawChart(chart, width, Math.round(width * 0.8)), [chart, width]);
  return <DrawingView drawing={drawing} pen={1} className="chart" />;
}
