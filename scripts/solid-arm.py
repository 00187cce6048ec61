"""Solid finite elements of one arm, the outside check of src/airframe.

Needs CalculiX (Debian package calculix-ccx, 2.20) and numpy. Millimetres, tonnes, seconds, MPa.
The root face is held (or, with grip, both faces over that length behind it), the tip section is rigid
and carries the motor as six equal point masses. Prints frequencies [Hz] and tip deflection under 10 N
[mm], twist under 100 N mm [rad]. Run: python3 scripts/solid-arm.py
"""
import subprocess, os, sys, json, numpy as np
ISO=dict(E1=50000,E2=50000,E3=50000,nu12=.3,nu13=.3,nu23=.3,G12=19230.769,G13=19230.769,G23=19230.769,rho=1.55e-9)
ORT=dict(E1=52000,E2=52000,E3=9000,nu12=.12,nu13=.3,nu23=.3,G12=8000,G13=3500,G23=3500,rho=1.55e-9)
def mesh(L,b0,b1,t,nx,ny,nz,x0=0.0,nx0=0):
    # serendipity nodes on a doubled grid
    X=[ -x0+ x0*i/(2*nx0) for i in range(2*nx0)] if nx0 else []
    # grade towards ends? uniform
    X+= [L*i/(2*nx) for i in range(2*nx+1)]
    NX=nx+nx0
    ids={}; nodes=[]
    def nid(i,j,k):
        key=(i,j,k)
        if key not in ids:
            x=X[i]; b=b0+(b1-b0)*max(x,0)/L
            ids[key]=len(nodes)+1
            nodes.append((x,b*(j/(2*ny)-.5),t*(k/(2*nz)-.5)))
        return ids[key]
    els=[]
    for i in range(NX):
        for j in range(ny):
            for k in range(nz):
                a,b_,c=2*i,2*j,2*k
                c8=[(a,b_,c),(a+2,b_,c),(a+2,b_+2,c),(a,b_+2,c),(a,b_,c+2),(a+2,b_,c+2),(a+2,b_+2,c+2),(a,b_+2,c+2)]
                def mid(p,q): return tuple((u+v)//2 for u,v in zip(p,q))
                m=[mid(c8[0],c8[1]),mid(c8[1],c8[2]),mid(c8[2],c8[3]),mid(c8[3],c8[0]),mid(c8[4],c8[5]),mid(c8[5],c8[6]),mid(c8[6],c8[7]),mid(c8[7],c8[4]),mid(c8[0],c8[4]),mid(c8[1],c8[5]),mid(c8[2],c8[6]),mid(c8[3],c8[7])]
                els.append([nid(*p) for p in c8+m])
    return np.array(nodes),els,ids,NX
def six(m,Ix,Iy,Iz):
    # six masses +-d on each axis reproducing inertia: each m/6; sum over pair: 2*(m/6)*d^2
    sx=(Iy+Iz-Ix)/2; sy=(Ix+Iz-Iy)/2; sz=(Ix+Iy-Iz)/2
    return [np.sqrt(s/(m/3)) for s in (sx,sy,sz)]
def run(L,b0,b1,t,mat,tip=None,nx=None,ny=6,nz=4,grip=0,nm=5,name='job',freq_free=False):
    nx=nx or max(20,int(L/2.5))
    nodes,els,ids,NX=mesh(L,b0,b1,t,nx,ny,nz,grip,max(6,int(grip/1.8)) if grip else 0)
    n=len(nodes)
    out=['*NODE']
    for i,p in enumerate(nodes): out.append(f'{i+1},{p[0]:.6f},{p[1]:.6f},{p[2]:.6f}')
    ref,rot=n+1,n+2
    extra=[(L,0,0),(L,0,0)]
    pts=[]
    if tip:
        d=six(tip['m'],tip['Ix'],tip['Iy'],tip['Iz'])
        for ax in range(3):
            for s in (1,-1):
                p=[L,0,tip['zc']]; p[ax]+=s*d[ax]; pts.append(p)
    for i,p in enumerate(extra+pts): out.append(f'{n+1+i},{p[0]:.6f},{p[1]:.6f},{p[2]:.6f}')
    out.append('*ELEMENT,TYPE=C3D20R,ELSET=EALL')
    for i,e in enumerate(els):
        out.append(f'{i+1},'+','.join(map(str,e[:10]))+',\n'+','.join(map(str,e[10:])))
    x=nodes[:,0]
    if grip: fix=[i+1 for i in range(n) if x[i]<1e-9 and abs(abs(nodes[i,2])-t/2)<1e-9]
    else: fix=[i+1 for i in range(n) if abs(x[i])<1e-9]
    tipn=[i+1 for i in range(n) if abs(x[i]-L)<1e-9]
    def nset(nm_,l): 
        out.append(f'*NSET,NSET={nm_}')
        for i in range(0,len(l),12): out.append(','.join(map(str,l[i:i+12]))+',')
    nset('FIX',fix); 
    mp=[n+3+i for i in range(len(pts))]
    nset('TIP',tipn+mp)
    if pts:
        out.append('*ELEMENT,TYPE=MASS,ELSET=EM')
        for i,q in enumerate(mp): out.append(f'{len(els)+1+i},{q}')
        out.append('*MASS,ELSET=EM'); out.append(f"{tip['m']*1e-6/6:.9e}")
    m=mat
    out.append('*MATERIAL,NAME=M'); out.append('*ELASTIC,TYPE=ENGINEERING CONSTANTS')
    out.append(f"{m['E1']},{m['E2']},{m['E3']},{m['nu12']},{m['nu13']},{m['nu23']},{m['G12']},{m['G13']}\n{m['G23']},293.")
    out.append('*DENSITY'); out.append(f"{m['rho']}")
    out.append('*SOLID SECTION,ELSET=EALL,MATERIAL=M')
    out.append('*BOUNDARY'); out.append('FIX,1,3')
    if not freq_free: out.append(f'*RIGID BODY,NSET=TIP,REF NODE={ref},ROT NODE={rot}')
    base=list(out)
    res={}
    def exe(lines,job):
        os.makedirs('/tmp/solid-arm',exist_ok=True)
        open(f'/tmp/solid-arm/{job}.inp','w').write('\n'.join(lines)+'\n')
        r=subprocess.run(['ccx',job],cwd='/tmp/solid-arm',capture_output=True,text=True,env={**os.environ,'OMP_NUM_THREADS':'1'})
        return open(f'/tmp/solid-arm/{job}.dat').read(), r.stdout
    if nm:
        d,o=exe(base+['*STEP','*FREQUENCY',str(nm),'*NODE FILE','U','*END STEP'],name+'f')
        f=[]
        on=False
        for line in d.splitlines():
            p=line.split()
            if 'E I G E N V A L U E' in line: on=True
            if 'P A R T I C' in line: break
            if on and len(p)==5 and p[0].isdigit(): f.append(float(p[3]))
        res['f']=f
    if not freq_free:
        for key,node,dof,val,get in [('uz',ref,3,10,2),('uy',ref,2,10,1),('ux',ref,1,10,0),('rotx',rot,1,100,0)]:
            d,o=exe(base+['*STEP','*STATIC','*CLOAD',f'{node},{dof},{val}','*NSET,NSET=OUT',f'{node}','*NODE PRINT,NSET=OUT','U','*END STEP'],name+'s')
            for line in d.splitlines():
                p=line.split()
                if len(p)==4 and p[0]==str(node): res[key]=float(p[1+get])
    return res
if __name__=='__main__':
    MOTOR=dict(m=35,zc=12,Ix=2881.7,Iy=2881.7,Iz=3430.)
    UD=dict(E1=110000,E2=9000,E3=9000,nu12=.3,nu13=.3,nu23=.4,G12=4500,G13=4500,G23=3200,rho=1.55e-9)
    QI=dict(E1=43000,E2=43000,E3=9000,nu12=.32,nu13=.3,nu23=.3,G12=16300,G13=3500,G23=3500,rho=1.52e-9)
    for name,L,b0,b1,t,m,grip in [
        ('S1',35,16,16,5,ISO,0),('S2',35,16,16,5,ORT,0),('S3',40,20,14,4,ORT,0),('S4',60,14,10,4,QI,0),
        ('S5',120,8,8,8,ISO,0),('S6',80,20,20,3,ISO,0),('S7',80,16,10,4,UD,0),('S8',30,12,12,6,QI,0),
        ('G1',90,10,10,6,ISO,25),('G2',90,10,10,6,QI,25),('G3',90,14,14,4,ORT,25),('G4',60,12,12,5,ORT,25),
        ('G5',90,10,10,6,UD,25),('G6',60,20,20,3,ORT,25)]:
        print(name,run(L,b0,b1,t,m,MOTOR,nx=max(16,int(L/2.5)),grip=grip,nm=4),flush=True)
    HEAVY=dict(m=50,zc=16,Ix=6000.,Iy=6000.,Iz=7500.)
    for name,L,b0,b1,t,m,tip,grip in [
        ('H1',50,18,12,4,UD,MOTOR,25),('H2',70,8,12,5,QI,MOTOR,0),('H3',25,14,14,6,ISO,MOTOR,0),
        ('H4',110,16,9,3,ORT,HEAVY,25),('H5',45,15,11,5,ORT,HEAVY,0)]:
        print(name,run(L,b0,b1,t,m,tip,nx=max(14,int(L/2.5)),grip=grip,nm=4),flush=True)
