"""Solid finite elements of a whole one-piece frame, free: square hub plate, four tapered arms.

Needs CalculiX 2.20 and numpy; see solid-arm.py beside it for units. The hub's 350 g body holds every
node within a radius of the middle, each 35 g motor its arm's end section, both raised above the plate.
Prints all frequencies [Hz], six rigid ones first. Run: python3 scripts/solid-frame.py
"""
import importlib.util, os, subprocess
import numpy as np
spec=importlib.util.spec_from_file_location('arm',os.path.join(os.path.dirname(__file__),'solid-arm.py'))
arm=importlib.util.module_from_spec(spec); spec.loader.exec_module(arm)
ISO,ORT,six=arm.ISO,arm.ORT,arm.six
os.makedirs('/tmp/solid-arm',exist_ok=True)
def run_frame(half=30,rh=14,t=5,b0=14,b1=10,R=120,mat=ISO,name='fr',nz=2,h=4.,nm=16,round_=False):
    arm_n=int((R-half)/h); bn=4; gap=half-b0/2; gn=max(2,int(gap/h*1.3))
    lines=[-R+(R-half)*i/arm_n for i in range(arm_n)]+[-half+gap*i/gn for i in range(gn)]+[-b0/2+b0*i/bn for i in range(bn)]
    lines+= [-v for v in lines[::-1]]
    lines=lines[:len(lines)//2]+[0.0]*0+lines[len(lines)//2:]
    L=sorted(set(round(v,9) for v in lines+[0.0]))
    n=len(L)-1
    full=[]
    for i in range(n): full+= [L[i],(L[i]+L[i+1])/2]
    full.append(L[-1])
    ids={};nodes=[]
    def pos(i,j,k):
        x,y=full[i],full[j]
        if abs(x)>half: y=y*(b0+(b1-b0)*(abs(x)-half)/(R-half))/b0
        elif abs(y)>half: x=x*(b0+(b1-b0)*(abs(y)-half)/(R-half))/b0
        return (x,y,t*(k/(2*nz)-.5))
    def nid(i,j,k):
        if (i,j,k) not in ids: ids[(i,j,k)]=len(nodes)+1; nodes.append(pos(i,j,k))
        return ids[(i,j,k)]
    els=[]
    for i in range(n):
        for j in range(n):
            cx,cy=full[2*i+1],full[2*j+1]
            inhub=abs(cx)<half and abs(cy)<half
            ina=(abs(cx)<b0/2) or (abs(cy)<b0/2)
            if not(inhub or ina): continue
            for k in range(nz):
                a,b_,c=2*i,2*j,2*k
                c8=[(a,b_,c),(a+2,b_,c),(a+2,b_+2,c),(a,b_+2,c),(a,b_,c+2),(a+2,b_,c+2),(a+2,b_+2,c+2),(a,b_+2,c+2)]
                mid=lambda p,q: tuple((u+v)//2 for u,v in zip(p,q))
                m=[mid(c8[p],c8[q]) for p,q in [(0,1),(1,2),(2,3),(3,0),(4,5),(5,6),(6,7),(7,4),(0,4),(1,5),(2,6),(3,7)]]
                els.append([nid(*p) for p in c8+m])
    nodes=np.array(nodes); N=len(nodes)
    out=['*NODE']+[f'{i+1},{p[0]:.6f},{p[1]:.6f},{p[2]:.6f}' for i,p in enumerate(nodes)]
    bodies=[]; nxt=N+1
    M=dict(m=35,zc=12,Ix=2881.7,Iy=2881.7,Iz=3430.)
    H=dict(m=350,zc=10,Ix=93333.,Iy=233333.,Iz=233333.)
    masses=[];rig=[]
    ne=len(els)+1
    def body(c,d,sel,rot=False):
        nonlocal nxt
        dd=six(d['m'],d['Ix'],d['Iy'],d['Iz'])
        pts=[]
        for ax in range(3):
            for s in (1,-1):
                q=[c[0],c[1],d['zc']]; q[ax]+=s*dd[ax]; pts.append(q)
        first=nxt
        for q in pts: out.append(f'{nxt},{q[0]:.6f},{q[1]:.6f},{q[2]:.6f}'); nxt+=1
        ref,rot_=nxt,nxt+1
        for _ in range(2): out.append(f'{nxt},{c[0]:.6f},{c[1]:.6f},0.'); nxt+=1
        masses.append((d['m'],list(range(first,first+6)))); rig.append((sel+list(range(first,first+6)),ref,rot_))
    e=1e-6
    for ang in range(4):
        c=[(R,0),(0,R),(-R,0),(0,-R)][ang]
        sel=[i+1 for i in range(N) if abs(nodes[i,ang%2]-c[ang%2])<e and abs(nodes[i,1-ang%2])<b0]
        body(c,M,sel)
    body((0,0),H,[i+1 for i in range(N) if np.hypot(nodes[i,0],nodes[i,1])<rh+e])
    out.append('*ELEMENT,TYPE=C3D20R,ELSET=EALL')
    for i,q in enumerate(els): out.append(f'{i+1},'+','.join(map(str,q[:10]))+',\n'+','.join(map(str,q[10:])))
    eid=len(els)+1
    for bi,(m,ns) in enumerate(masses):
        out.append(f'*ELEMENT,TYPE=MASS,ELSET=EM{bi}')
        for q in ns: out.append(f'{eid},{q}'); eid+=1
        out.append(f'*MASS,ELSET=EM{bi}'); out.append(f'{m*1e-6/6:.9e}')
    for bi,(sel,ref,rot_) in enumerate(rig):
        out.append(f'*NSET,NSET=RB{bi}')
        for i in range(0,len(sel),12): out.append(','.join(map(str,sel[i:i+12]))+',')
        out.append(f'*RIGID BODY,NSET=RB{bi},REF NODE={ref},ROT NODE={rot_}')
    m=mat
    out+=['*MATERIAL,NAME=M','*ELASTIC,TYPE=ENGINEERING CONSTANTS',f"{m['E1']},{m['E2']},{m['E3']},{m['nu12']},{m['nu13']},{m['nu23']},{m['G12']},{m['G13']}\n{m['G23']},293.",'*DENSITY',str(m['rho']),'*SOLID SECTION,ELSET=EALL,MATERIAL=M','*STEP','*FREQUENCY',str(nm),'*END STEP']
    open(f'/tmp/solid-arm/{name}.inp','w').write('\n'.join(out)+'\n')
    r=subprocess.run(['ccx',name],cwd='/tmp/solid-arm',capture_output=True,text=True,env={**os.environ,'OMP_NUM_THREADS':'1'})
    f=[];on=False
    for line in open(f'/tmp/solid-arm/{name}.dat'):
        p=line.split()
        if 'E I G E N V A L U E' in line: on=True
        if 'P A R T I C' in line: break
        if on and len(p)==5 and p[0].isdigit(): f.append(round(float(p[3]),3))
    return f, N
if __name__=='__main__':
    print('square60 r14',run_frame()); 
    print('square60 r20',run_frame(rh=20)); 
    print('square40 r10 t4',run_frame(half=20,rh=10,t=4,R=100)); 
    print('ort',run_frame(half=30,rh=14,mat=ORT))
