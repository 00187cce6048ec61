/*
 * One arm struck at its motor, by corotational beam elements with large deflections, explicit in time: the outside check of
 * src/airframe/struckArm.ts (test/airframe/struckArm.test.ts holds the figures). In the plane of the arm and the upright: the
 * motor and the hub are rigid bodies, the pack hangs on two springs, the ground is a spring and a dashpot that only pushes.
 * The arm is the demo's Turnstone 5: 5 mm plain weave of 52 GPa, tapered, 1.5 mm longer for its grip.
 * Tells the speed at which a fibre is first pressed by 450 MPa.
 *
 *   gcc -O2 -o /tmp/struck-arm scripts/struck-arm.c -lm && /tmp/struck-arm
 *
 * SI; x along the arm outwards, z up; heights from the arm's middle.
 */
#include <math.h>
#include <stdio.h>
#include <string.h>
#define N 14
typedef struct {int flat; double hm,hI,hx,hz,e,kc,rest,T,packk,packkz; int bell; double zlow; int pad; double kpad;} Case;
static double E=52e9,t=.005,L=.093873;
static double wat(double s){double at[7]={0,.5,.8755,.88795,.9253,.96265,1},w[7]={.015,.011,.011751,.011776,.0184,.021941,.023};for(int i=1;i<7;i++)if(s<=at[i])return w[i-1]+(w[i]-w[i-1])*(s-at[i-1])/(at[i]-at[i-1]);return .023;}
static void run(Case c,double v,double*comp,double*tens,double*force,double*where,double*when){
 double A[N],I[N],W[N],l0=L/N,rho=1550;for(int i=0;i<N;i++){double b=wat((i+.5)/N);A[i]=b*t;I[i]=b*t*t*t/12;W[i]=b*t*t/6;}
 double m[N+1]={0},J[N+1]={0};for(int i=0;i<N;i++){double q=rho*A[i]*l0/2;m[i]+=q;m[i+1]+=q;J[i]+=q*l0*l0/12;J[i+1]+=q*l0*l0/12;}
 double h=.01252,R=.0143,tm=.0378,tI=5.08e-6;m[0]+=c.hm;J[0]+=c.hI;m[N]+=tm;J[N]+=tI;
 double rr[2]={.0226-c.hx,-c.hz},rt[2]={0,-h};
 double P[N+1][2],V[N+1][2],th[N+1],om[N+1];for(int i=0;i<=N;i++){P[i][0]=i*l0;P[i][1]=0;V[i][0]=c.flat?0:v;V[i][1]=c.flat?-v:0;th[i]=om[i]=0;}
 P[0][0]-=rr[0];P[0][1]-=rr[1];P[N][0]-=rt[0];P[N][1]-=rt[1];
 double pm=.208,pk[2]={-.003-.0226,.0525},pv[2]={V[0][0],V[0][1]},p0[2]={pk[0]-P[0][0],pk[1]-P[0][1]};
 double px[17],pz[17],ks[17];int np=0;
 if(c.flat){px[0]=0;pz[0]=-h;ks[0]=c.kc;np=1;}else if(!c.bell){px[0]=R;pz[0]=c.e-h;ks[0]=c.kc;np=1;}
 else{for(int i=0;i<15;i++){px[np]=R;pz[np]=c.zlow+(.020-c.zlow)*i/14-h;ks[np++]=c.kc/5;}if(c.pad)for(int s=-1;s<=1;s+=2){px[np]=.0115;pz[np]=s*.0025-h;ks[np++]=c.kpad/2;}}
 double wall=P[N][0]+R,loss=-log(c.rest),cf=2*loss/hypot(M_PI,loss);
 double dt=.3*l0/sqrt(E/rho),d2=.15*l0*l0/sqrt(12*E*I[N-1]/(rho*A[N-1]*1.0));if(d2<dt)dt=d2;if(4e-7<dt)dt=4e-7;
 *comp=*tens=*force=0;
 for(double T=0;T<c.T;T+=dt){
  double pos[N+1][2];memcpy(pos,P,sizeof P);
  double r0[2]={cos(th[0])*rr[0]-sin(th[0])*rr[1],sin(th[0])*rr[0]+cos(th[0])*rr[1]},r1[2]={cos(th[N])*rt[0]-sin(th[N])*rt[1],sin(th[N])*rt[0]+cos(th[N])*rt[1]};
  for(int k=0;k<2;k++){pos[0][k]+=r0[k];pos[N][k]+=r1[k];}
  double F[N+1][2],M[N+1];memset(F,0,sizeof F);memset(M,0,sizeof M);
  for(int i=0;i<N;i++){double dx=pos[i+1][0]-pos[i][0],dz=pos[i+1][1]-pos[i][1],ln=hypot(dx,dz),be=atan2(dz,dx),cc=dx/ln,ss=dz/ln,t1=th[i]-be,t2=th[i+1]-be;
   double Nf=E*A[i]*(ln-l0)/l0,k=E*I[i]/l0,M1=k*(4*t1+2*t2),M2=k*(2*t1+4*t2),Q=(M1+M2)/ln;
   double fx=Nf*cc+Q*ss,fz=Nf*ss-Q*cc;F[i][0]+=fx;F[i][1]+=fz;F[i+1][0]-=fx;F[i+1][1]-=fz;M[i]-=M1;M[i+1]-=M2;
   double s[4]={Nf/A[i]+M1/W[i],Nf/A[i]-M1/W[i],Nf/A[i]+M2/W[i],Nf/A[i]-M2/W[i]};
   for(int q=0;q<4;q++){if(-s[q]>*comp){*comp=-s[q];*where=(i+q/2)*1.0/N;*when=T*1e3;}if(s[q]>*tens)*tens=s[q];}if(-Nf>*force)*force=-Nf;}
  M[0]+=r0[0]*F[0][1]-r0[1]*F[0][0];M[N]+=r1[0]*F[N][1]-r1[1]*F[N][0];
  double ct=cos(th[N]),st=sin(th[N]);
  for(int q=0;q<np;q++){double rx=ct*px[q]-st*pz[q],rz=st*px[q]+ct*pz[q],cd=cf*sqrt(ks[q]*tm/(np>1?np:1));
   if(c.flat){double pen=-(P[N][1]+rz),vn=-(V[N][1]+om[N]*rx),f=pen>0?ks[q]*pen+cd*vn:0;if(f<0)f=0;F[N][1]+=f;M[N]+=rx*f;}
   else{double pen=P[N][0]+rx-wall,vn=V[N][0]-om[N]*rz,f=pen>0?ks[q]*pen+cd*vn:0;if(f<0)f=0;F[N][0]-=f;M[N]+=rz*f;}}
  {double a[2]={cos(th[0])*p0[0]-sin(th[0])*p0[1],sin(th[0])*p0[0]+cos(th[0])*p0[1]};double fp[2]={c.packk*(pk[0]-P[0][0]-a[0]),c.packkz*(pk[1]-P[0][1]-a[1])};
   F[0][0]+=fp[0];F[0][1]+=fp[1];M[0]+=a[0]*fp[1]-a[1]*fp[0];for(int k=0;k<2;k++){pv[k]-=fp[k]/pm*dt;pk[k]+=pv[k]*dt;}}
  for(int i=0;i<=N;i++){for(int k=0;k<2;k++){V[i][k]+=F[i][k]/m[i]*dt;P[i][k]+=V[i][k]*dt;}om[i]+=M[i]/J[i]*dt;th[i]+=om[i]*dt;}
 }}
/* Hub with and without the recording camera, which a soft print holds: mass, inertia, place along and above the root's frame. */
#define WHOLE .3985, .00113, -.00967, .0265
#define BARE .321, .000676, -.0207, .0141
#define PACK 2e4, 6e4

int main(void) {
  struct { const char *name; Case c; } list[] = {
    {"flat, concrete", {1, WHOLE, 0, 3e6, .3, 14e-3, PACK}},
    {"flat, wood", {1, WHOLE, 0, 3e5, .3, 14e-3, PACK}},
    {"flat, grass", {1, WHOLE, 0, 2e4, .1, 14e-3, PACK}},
    {"end-on at the bell, concrete", {0, WHOLE, .01125, 1.2e6, .3, 8e-3, PACK}},
    {"end-on at the bell, wood", {0, WHOLE, .01125, 1 / (1 / 2e6 + 1 / 3e5), .3, 12e-3, PACK}},
    {"end-on at the bell, grass", {0, WHOLE, .01125, 1 / (1 / 2e6 + 1 / 2e4), .1, 25e-3, PACK}},
    {"end-on in the arm's plane, concrete", {0, WHOLE, 0, 1.2e6, .3, 8e-3, PACK}},
    {"flat, concrete, camera left out", {1, BARE, 0, 3e6, .3, 14e-3, PACK}},
    {"flat, grass, camera left out", {1, BARE, 0, 2e4, .1, 14e-3, PACK}},
    {"end-on at the bell, concrete, camera left out", {0, BARE, .01125, 1.2e6, .3, 8e-3, PACK}},
    {"end-on, a flat wall on the whole bell, concrete", {0, WHOLE, .01125, 1.2e6, .3, 8e-3, PACK, 1, .006, 1, 3e6}},
  };
  for (unsigned i = 0; i < sizeof list / sizeof *list; i++) {
    double low = 1, high = 60, comp, tens, force, where = 0, when = 0, v = 0;
    for (int k = 0; k < 14; k++) {
      v = sqrt(low * high);
      run(list[i].c, v, &comp, &tens, &force, &where, &when);
      if (comp > 450e6) high = v; else low = v;
    }
    printf("%-48s %6.2f m/s, axial %5.0f N, at %.2f of the arm, %.2f ms\n", list[i].name, v, force, where, when);
  }
}
